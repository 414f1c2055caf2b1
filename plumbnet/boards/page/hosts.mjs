// What stands behind the page: the program on this machine, a notebook, or the table of a copy. All answer the same questions.

import { askServer, followSaves } from "./served.mjs";
import { touchesOf } from "./touch-code.mjs";

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
  isFramed = false;

  board() {
    return askServer("board.json");
  }

  /** @param {string} code @returns {Promise<Answer | Refused | null>} null where a later question took its place */
  async answer(code) {
    this.#asking?.abort();
    const asking = (this.#asking = new AbortController());
    try {
      const found = await askServer(`answer.json?state=${encodeURIComponent(code)}`, { signal: asking.signal });
      return asking.signal.aborted ? null : found;
    } catch (error) {
      if (asking.signal.aborted) return null;
      throw error;
    }
  }

  /** @param {string} key */
  picture(key) {
    return askServer(`picture.json?state=${encodeURIComponent(key)}`);
  }

  /** @param {string} code @param {string} heater */
  walk(code, heater) {
    return askServer(`walk.json?state=${encodeURIComponent(code)}&heater=${encodeURIComponent(heater)}`);
  }

  /** @param {string} code @param {string} heater */
  heatUp(code, heater) {
    return askServer(`heat-up.json?state=${encodeURIComponent(code)}&heater=${encodeURIComponent(heater)}`);
  }

  /** @param {(told: {mistake: string}) => void} tell */
  follow(tell) {
    return followSaves(tell);
  }
}

/** A notebook around this page, in whose kernel the program is: it passes questions on and answers back. */
export class FrameHost {
  isLive = true;
  isFramed = true;
  #last = 0;
  /** @type {Map<number, (answer: any) => void>} */
  #waiting = new Map();

  constructor() {
    addEventListener("message", (event) => {
      const told = event.source === parent ? event.data?.board : undefined;
      this.#waiting.get(told?.id)?.(told.answer);
      this.#waiting.delete(told?.id);
    });
  }

  /** @param {string} ask @param {string} [state] @param {string} [heater] @returns {Promise<any>} */
  #ask(ask, state = "", heater = "") {
    const id = ++this.#last;
    // To whatever page is around: a notebook may stand at any address, and nothing is told but names of its own layout.
    parent.postMessage({ board: { id, ask, state, heater } }, "*");
    return new Promise((done) => this.#waiting.set(id, done));
  }

  board() {
    return this.#ask("board");
  }

  /** @param {string} code @returns {Promise<Answer | Refused>} */
  answer(code) {
    return this.#ask("answer", code);
  }

  /** @param {string} key */
  picture(key) {
    return this.#ask("picture", key);
  }

  /** @param {string} code @param {string} heater */
  walk(code, heater) {
    return this.#ask("walk", code, heater);
  }

  /** @param {string} code @param {string} heater */
  heatUp(code, heater) {
    return this.#ask("heat-up", code, heater);
  }
}

/** The table of a copy: every state of what was chosen was worked out beforehand. */
export class TableHost {
  isLive = false;
  /** Whether another page is around this one, as a report is. */
  isFramed = parent !== window;

  /** @param {any} table */
  constructor(table) {
    this.table = table;
  }

  async board() {
    return this.table.board;
  }

  /** The digits of a state: for each thing held 0, or one more than the place of its option. @param {string} code @returns {number[] | null} */
  #digits(code) {
    const digits = this.table.held.map(() => 0);
    for (const touch of touchesOf(code) ?? [{ at: -1 }]) {
      const at = this.table.held.findIndex((/** @type {any} */ one) => one[0] === touch.at);
      const place = at < 0 || touch.option === undefined ? -1 : this.table.held[at][1].indexOf(touch.option);
      if (place < 0) return null;
      digits[at] = place + 1;
    }
    return digits;
  }

  /** @param {number[]} digits @returns {number | undefined} */
  #place(digits) {
    const { index, held } = this.table;
    if (!Array.isArray(index)) return index[digits.join(",")];
    return index[digits.reduce((sum, digit, at) => sum * (held[at][1].length + 1) + digit, 0)];
  }

  /** @param {string} code @returns {Promise<Answer | Refused>} */
  async answer(code) {
    const digits = this.#digits(code), found = digits ? this.#place(digits) : undefined;
    if (!digits || found === undefined) return { refused: `This state is not in this copy, which holds up to ${this.table.at_once} changes at a time. The live board answers it.` };
    if (found < 0) return { refused: "This cannot be made." };
    const [lost, ...rows] = this.table.answers[found], heaters = rows.map((/** @type {number} */ at) => this.#heater(at));
    /** @type {Record<string, string>} */
    const symbols = {};
    /** @type {string[]} */
    const faults = [], putIn = [];
    for (const touch of touchesOf(code) ?? []) {
      const one = this.table.board.touchables[touch.at], option = one.options[touch.option ?? 0];
      if (one.pipe) putIn.push(`${touch.at}-${touch.option}`);
      else symbols[one.name] = option.symbol;
      if (option.sort === "fault") faults.push(one.name);
    }
    const stops = [...new Set(heaters.flatMap((/** @type {HeaterAnswer} */ one) => one.stops))];
    putIn.sort((a, b) => parseInt(a) - parseInt(b));
    return { heaters, symbols, stops, faults, cut_off: this.table.cut_off[lost], picture: putIn.join(",") };
  }

  /** @param {number} at @returns {HeaterAnswer} */
  #heater(at) {
    const [name, verdict, byFault, cold, limit, end, needle, sentence, ladder, way, stops, zone] = this.table.heaters[at], all = this.table.strings;
    const long = { sentence: all.sentence[sentence], ladder: all.ladder[ladder], way: all.way[way], stops: all.stops[stops], zone: all.zone[zone] };
    return { name, verdict, by_fault: byFault === 1, cold, limit, end, needle, ...long };
  }

  /** @param {string} key */
  async picture(key) {
    return this.table.pictures[key];
  }
}

/** @returns {Promise<LiveHost | FrameHost | TableHost>} */
export async function hostOf() {
  const held = /** @type {HTMLElement} */ (document.getElementById("data")).textContent;
  if (!held?.trim()) return new LiveHost();
  const table = JSON.parse(held);
  if (table.framed) return new FrameHost();
  if (table.packed === undefined) return new TableHost(table);
  const bytes = Uint8Array.from(atob(table.packed), (sign) => sign.charCodeAt(0));
  return new TableHost(await new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).json());
}
