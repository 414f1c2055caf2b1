// What stands behind the page: the program on this machine, or the table of a copy. Both answer the same questions.

/**
 * @typedef {object} HeaterAnswer
 * @property {string} name
 * @property {string} verdict
 * @property {boolean} by_fault
 * @property {string} sentence
 * @property {number | null} cold
 * @property {number} limit
 * @property {number | null} end
 * @property {string} needle
 * @property {[string, number, string][]} ladder
 * @property {string[]} way
 * @property {string[]} stops
 * @property {string} zone
 */
/** @typedef {{heaters: HeaterAnswer[], symbols: Record<string, string>, stops: string[], faults: string[], cut_off: string[], picture: string}} Answer */
/** @typedef {{refused: string}} Refused */

/** The program on this machine, asked over a connection that no other page can use. */
export class LiveHost {
  /** @type {AbortController | null} */
  #asking = null;
  isLive = true;

  /** @param {string} path @param {AbortSignal} [signal] */
  async #ask(path, signal) {
    const reply = await fetch(path, { headers: { "x-board": "1" }, signal, cache: "no-store" });
    const body = await reply.json();
    if (!reply.ok && body.refused === undefined) throw new Error(`status ${reply.status}`);
    return body;
  }

  board() {
    return this.#ask("board.json");
  }

  /** @param {string} code @returns {Promise<Answer | Refused | null>} null where a later question took its place */
  async answer(code) {
    this.#asking?.abort();
    const asking = (this.#asking = new AbortController());
    try {
      const found = await this.#ask(`answer.json?state=${encodeURIComponent(code)}`, asking.signal);
      return asking.signal.aborted ? null : found;
    } catch (error) {
      if (asking.signal.aborted) return null;
      throw error;
    }
  }

  /** @param {string} key */
  picture(key) {
    return this.#ask(`picture.json?state=${encodeURIComponent(key)}`);
  }

  /** @param {string} code @param {string} heater */
  walk(code, heater) {
    return this.#ask(`walk.json?state=${encodeURIComponent(code)}&heater=${encodeURIComponent(heater)}`);
  }

  /** Calls back whenever the file was saved, with what is wrong with it or nothing. @param {(told: {mistake: string}) => void} tell */
  async follow(tell) {
    for (let seen = 0; ; ) {
      try {
        const told = await this.#ask(`changed.json?seen=${seen}`);
        if (told.seen !== seen && seen > 0) tell(told);
        else if (told.mistake) tell(told);
        seen = told.seen;
      } catch {
        await new Promise((done) => setTimeout(done, 1000));
      }
    }
  }
}

/** The table of a copy: every state of what was chosen was worked out beforehand. */
export class TableHost {
  isLive = false;

  /** @param {any} table */
  constructor(table) {
    this.table = table;
  }

  async board() {
    return this.table.board;
  }

  /** @param {string} code @returns {Promise<Answer | Refused>} */
  async answer(code) {
    const words = code ? code.split(",") : [];
    const found = this.table.states[words.sort().join(",")];
    if (found === undefined) return { refused: "This state is not in this copy. The live board answers it." };
    if (typeof found === "string") return { refused: found };
    const [heaters, rest] = this.table.answers[found];
    return { ...this.table.rests[rest], heaters: heaters.map((/** @type {number} */ at) => this.table.heaters[at]) };
  }

  /** @param {string} key */
  async picture(key) {
    return this.table.pictures[key];
  }
}

/** @returns {LiveHost | TableHost} */
export function hostOf() {
  const held = /** @type {HTMLElement} */ (document.getElementById("data")).textContent;
  return held?.trim() ? new TableHost(JSON.parse(held)) : new LiveHost();
}
