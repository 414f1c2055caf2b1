// Which states were shown, one behind the other, each as a word: where undo goes back to.

/** The browser's own history: a state stands in the address, can be sent, and its buttons undo and redo. */
export class AddressPast {
  /** What the address says. */
  said() {
    return decodeURIComponent(location.hash.slice(1));
  }

  /** @param {string} word @param {number} step @param {boolean} isSame whether it takes the place of the last */
  put(word, step, isSame) {
    history[isSame ? "replaceState" : "pushState"]({ step }, "", word ? `#${word}` : location.pathname + location.search);
  }

  back() {
    history.back();
  }

  on() {
    history.forward();
  }

  /** @param {(word: string, step: number | undefined) => void} tell called once another state is wanted */
  follow(tell) {
    addEventListener("popstate", (event) => tell(this.said(), event.state?.step));
  }
}

/** A list: inside another page the address and the history are that page's. */
export class OwnPast {
  /** @type {string[]} */
  #words = [""];
  #at = 0;
  /** @type {(word: string, step: number) => void} */
  #tell = () => {};

  said() {
    return this.#words[this.#at];
  }

  /** @param {string} word @param {number} step @param {boolean} _isSame */
  put(word, step, _isSame) {
    this.#words = [...this.#words.slice(0, step), word];
    this.#at = step;
  }

  back() {
    this.#go(-1);
  }

  on() {
    this.#go(1);
  }

  /** @param {number} by */
  #go(by) {
    if (this.#words[this.#at + by] === undefined) return;
    this.#at += by;
    this.#tell(this.said(), this.#at);
  }

  /** @param {(word: string, step: number) => void} tell called once another state is wanted */
  follow(tell) {
    this.#tell = tell;
  }
}
