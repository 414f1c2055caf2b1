// Exercises one after another: an option is chosen by a tap on its part or its word, met with its hint, and tried once more.

import { SVG_NS } from "./gauge.mjs";
import { HeatUpStrip } from "./heat-up.mjs";
import { isStill, Picture } from "./picture.mjs";

/** @typedef {{name: string, text: string}} Hint */
/** @typedef {{word: string, meaning: string, part: string | null, hint: Hint | null}} Option */
/** @typedef {{unit: string, right: number, tolerance: number, causes: [number, Hint][], less: Hint, more: Hint}} Asked */
/** @typedef {{blank: number, prompt: string, right: string, options: Option[], number: Asked | null}} Blank */
/** @typedef {{given: string, held?: string}} Try */

const TRIES = 2;
const PLAIN = { heaters: [], symbols: {}, stops: [], faults: [], cut_off: [], picture: "" };
const $ = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));

/** What is said of a number that is not the right one: that of the nearest cause, or of its side. @param {Asked} asked @param {number} value */
export function hintOf(asked, value) {
  const near = asked.causes.filter(([cause]) => Math.abs(value - cause) <= asked.tolerance);
  near.sort(([a], [b]) => Math.abs(value - a) - Math.abs(value - b));
  return near.length ? near[0][1] : value < asked.right ? asked.less : asked.more;
}

/** A part in words. @param {string[]} cells */
function row(cells) {
  const made = document.createElement("tr");
  for (const [at, words] of cells.entries()) {
    const cell = document.createElement(at ? "td" : "th");
    cell.textContent = words;
    made.append(cell);
  }
  return made;
}

/** A part says what it is to who points at it or hears it. @param {SVGGElement} part @param {string} name @param {string | undefined} kind */
function named(part, name, kind) {
  const title = document.createElementNS(SVG_NS, "title");
  title.textContent = kind ? `${name}, ${kind}` : name;
  part.setAttribute("role", "img");
  part.setAttribute("aria-label", title.textContent);
  part.prepend(title);
}

class Tasks {
  /** @param {any} data */
  constructor(data) {
    this.data = data;
    this.picture = new Picture($("pane"));
    this.strip = new HeatUpStrip(this.picture);
    this.at = -1;
    /** @type {any[]} */
    this.given = [];
    $("typed").addEventListener("submit", (/** @type {Event} */ event) => {
      event.preventDefault();
      this.#typed($("number").value);
    });
    $("next").addEventListener("click", () => this.#next());
    this.#next();
  }

  get task() {
    return this.data.tasks[this.at];
  }

  #next() {
    this.#cool();
    this.at += 1;
    if (this.at >= this.data.tasks.length) return this.#end();
    const { place, about, supposed, prompt, picture, blanks } = this.task;
    $("place").textContent = `${this.at + 1} of ${this.data.tasks.length}: ${place}`;
    $("about").textContent = about;
    $("supposed").hidden = !supposed;
    $("supposed").textContent = supposed ? `Suppose: ${supposed}.` : "";
    $("prompt").textContent = prompt;
    $("onward").hidden = true;
    $("rows").replaceChildren(...this.task.parts.map(row));
    $("assumed").textContent = this.task.assumed ? `Where nothing is said: ${this.task.assumed}.` : "";
    this.picture.show(picture);
    this.picture.paint(PLAIN, undefined, new Set());
    for (const [name, part] of this.picture.parts) named(part, name, this.picture.kinds?.get(name));
    this.left = [...blanks];
    this.#ask("");
    document.body.dataset.shown = String(this.at + 1);
  }

  /** Asks the next blank, or tells the reason and shows the colours. @param {string} said */
  #ask(said) {
    /** @type {Blank | undefined} */
    this.blank = this.left?.shift();
    /** @type {Try[]} */
    this.tries = [];
    $("options").replaceChildren();
    $("typed").hidden = !this.blank?.number;
    $("asked").textContent = this.blank?.prompt ?? "";
    if (!this.blank) return this.#tell(said);
    $("hint").textContent = said;
    $("unit").textContent = this.blank.number?.unit ?? "";
    $("number").value = "";
    $("options").append(...this.blank.options.map((option) => this.#button(option)));
    for (const option of this.blank.options) this.#tappable(option);
  }

  /** @param {Option} option */
  #button(option) {
    const button = document.createElement("button"), meaning = document.createElement("small");
    button.textContent = option.word;
    meaning.textContent = option.meaning;
    if (option.meaning) button.append(meaning);
    button.dataset.option = option.word;
    button.addEventListener("click", () => this.#chosen(option));
    return button;
  }

  /** A part that stands for an option is tapped as its word is; keys have the word. @param {Option} option */
  #tappable(option) {
    const part = option.part === null ? undefined : this.picture.parts.get(option.part);
    part?.classList.add("option");
    part?.addEventListener("click", () => this.#chosen(option));
  }

  /** @param {Option} option */
  #chosen(option) {
    if (!this.blank?.options.includes(option) || this.tries?.some((one) => one.given === option.word)) return;
    const button = [...$("options").children].find((one) => one.dataset.option === option.word);
    button?.classList.add(option.hint ? "tried" : "right");
    if (option.hint && option.part !== null) this.picture.parts.get(option.part)?.classList.add("tried");
    this.#answered(option.word, option.hint);
  }

  /** @param {string} typed */
  #typed(typed) {
    const asked = this.blank?.number, value = Number(typed.trim().replace(",", "."));
    if (!asked) return;
    if (!typed.trim() || !Number.isFinite(value)) return void ($("hint").textContent = `Write a number, in ${asked.unit}.`);
    const isRight = Math.abs(value - asked.right) <= asked.tolerance;
    this.#answered(`${value} ${asked.unit}`, isRight ? null : hintOf(asked, value));
  }

  /** @param {string} given @param {Hint | null} hint */
  #answered(given, hint) {
    const blank = /** @type {Blank} */ (this.blank);
    this.tries?.push(hint ? { given, held: hint.name } : { given });
    const isOver = !hint || (this.tries?.length ?? 0) >= TRIES;
    if (!isOver) return void ($("hint").textContent = hint.text);
    const { number, question, could, again } = this.task;
    const answer = { exercise: number, blank: blank.blank, question, right: blank.right, tries: this.tries };
    this.given.push({ ...answer, could: blank.blank === 1 ? could : [], ...(again ? { again } : {}) });
    for (const part of this.picture.parts.values()) part.classList.remove("option", "tried");
    this.#ask(hint ? `${hint.text} The answer is ${blank.right}.` : `Right: ${given}.`);
  }

  /** The water in its colours, as it heats up, and then the reason. @param {string} said */
  #tell(said) {
    const { answer, heater, because, course } = this.task;
    const shown = answer.heaters.find((/** @type {any} */ one) => one.name === heater) ?? answer.heaters[0];
    this.picture.paint(answer, shown, new Set());
    const told = (/** @type {string[]} */ lines) =>
      $("hint").replaceChildren(...lines.map((/** @type {string} */ words) => {
        const line = document.createElement("p");
        line.textContent = words;
        return line;
      }));
    told([said]);
    if (course) this.#heatUp(course, shown, () => told([said, ...because]));
    else told([said, ...because]);
    $("onward").hidden = false;
    $("next").textContent = this.at + 1 < this.data.tasks.length ? "Next" : "To the end";
    $("next").focus();
    document.body.dataset.shown = `${this.at + 1} told`;
  }

  /**
   * Plays what comes of it; where nothing may move it stands at the end, and can be moved by hand.
   * @param {import("./heat-up.mjs").Course} course @param {any} heater @param {() => void} seen called once it is halted or over
   */
  #heatUp(course, heater, seen) {
    const ladder = heater.ladder.map((/** @type {any} */ rung) => rung[1]), unit = course.units.pressure;
    $("gauge").hidden = false;
    $("whose").textContent = `${heater.name}, ${unit}`;
    const heating = this.strip.show(course, heater, unit, 1.07 * Math.max(heater.cold ?? 0, heater.limit, ...ladder), seen);
    if (isStill()) heating?.stand(1);
    else heating?.play();
  }

  /** Puts the heat-up away. */
  #cool() {
    this.strip.away();
    $("gauge").hidden = true;
  }

  /** How many were right at once, and the answers as the file to hand in. */
  #end() {
    const right = this.given.filter((one) => !one.tries[0].held).length;
    $("place").textContent = `${right} of ${this.given.length} right at once`;
    for (const id of ["about", "prompt", "asked"]) $(id).textContent = "";
    for (const id of ["supposed", "onward"]) $(id).hidden = true;
    for (const id of ["pane", "parts"]) $(id).replaceChildren();
    const link = document.createElement("a");
    link.id = "results";
    link.download = "results.yaml";
    link.textContent = "Save my answers, to be handed in";
    link.href = URL.createObjectURL(new Blob([this.results()], { type: "text/yaml" }));
    $("hint").replaceChildren(link);
    document.body.dataset.shown = "end";
  }

  /** What was answered as a file of results, a sitting to each level and units. */
  results() {
    const day = new Date(), pad = (/** @type {number} */ part) => String(part).padStart(2, "0");
    const on = `${day.getFullYear()}-${pad(day.getMonth() + 1)}-${pad(day.getDate())}`;
    const sittings = new Map();
    for (const one of this.given) {
      const { level, units } = this.data.tasks.find((/** @type {any} */ task) => task.number === one.exercise);
      const key = `${level} ${units}`, dealt = this.data.dealt ? { dealt: this.data.dealt } : {};
      if (!sittings.has(key)) sittings.set(key, { day: on, ...dealt, level, units, answers: [] });
      sittings.get(key).answers.push(one);
    }
    return `${JSON.stringify({ [this.data.key]: 1, sittings: [...sittings.values()] }, null, 1)}\n`;
  }
}

new Tasks(JSON.parse($("data").textContent));
document.body.dataset.ready = "yes";
