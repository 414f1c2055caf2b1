// Exercises one after another: an option is chosen by a tap on its part or its word, met with its hint, and tried once more.

import { SVG_NS } from "./gauge.mjs";
import { HeatUpStrip } from "./heat-up.mjs";
import { lessonHost } from "./lesson-hosts.mjs";
import { isStill, Picture } from "./picture.mjs";
import { unanswered } from "./served.mjs";

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
  /** @type {any} */
  task = null;
  /** @type {any[]} */
  given = [];
  at = 0;
  /** Exercises asked for; of several only the last is shown. */
  turn = 0;
  isOver = false;
  /** @type {Promise<void>} */
  keeping = Promise.resolve();

  /** @param {import("./lesson-hosts.mjs").HeldLesson | import("./lesson-hosts.mjs").LiveLesson} host */
  constructor(host) {
    this.host = host;
    this.picture = new Picture($("pane"));
    this.strip = new HeatUpStrip(this.picture);
    $("typed").addEventListener("submit", (/** @type {Event} */ event) => {
      event.preventDefault();
      this.#typed($("number").value);
    });
    $("next").addEventListener("click", () => this.#to(this.at + 1));
  }

  async begin() {
    if (await this.#load()) await this.#to(0);
  }

  /** Asks for the lesson anew; whether there is one. */
  async #load() {
    const lesson = await this.host.lesson().catch(unanswered);
    if ("refused" in lesson) return this.#warn(lesson.refused), false;
    /** @type {import("./lesson-hosts.mjs").Lesson} */
    this.lesson = lesson;
    document.body.dataset.version = lesson.digest;
    return true;
  }

  /** Says calmly what could not be done; nothing where all could. @param {string} words */
  #warn(words) {
    $("warning").hidden = !words;
    $("warning").textContent = words;
  }

  get count() {
    return this.lesson?.count ?? 0;
  }

  /** The blanks of an exercise that are not done with, all where nothing is known of it. @param {number} at */
  #left(at) {
    return this.lesson?.left?.[at] ?? null;
  }

  /** Goes on to an exercise, or to the next that is not done with, or to the end. @param {number} at */
  async #to(at) {
    const turn = ++this.turn;
    this.#cool();
    while (at < this.count && this.#left(at)?.length === 0) at += 1;
    if (at >= this.count) {
      this.at = at;
      return this.#end();
    }
    const task = await this.host.task(at).catch(unanswered);
    if (turn !== this.turn) return;
    this.#warn(task.refused ?? "");
    if (task.refused) return;
    this.at = at;
    this.#show(task);
  }

  /** @param {any} task */
  #show(task) {
    this.task = task;
    this.isOver = false;
    const { place, about, supposed, prompt, picture, blanks } = task, left = this.#left(this.at);
    $("place").textContent = `${this.at + 1} of ${this.count}: ${place}`;
    $("about").textContent = about;
    $("supposed").hidden = !supposed;
    $("supposed").textContent = supposed ? `Suppose: ${supposed}.` : "";
    $("prompt").textContent = prompt;
    $("onward").hidden = true;
    $("parts").hidden = false;
    $("rows").replaceChildren(...task.parts.map(row));
    $("assumed").textContent = task.assumed ? `Where nothing is said: ${task.assumed}.` : "";
    this.picture.show(picture);
    this.picture.paint(PLAIN, undefined, new Set());
    for (const [name, part] of this.picture.parts) named(part, name, this.picture.kinds?.get(name));
    this.left = blanks.filter((/** @type {Blank} */ one) => left === null || left.includes(one.blank));
    this.#ask("");
    document.body.dataset.shown = String(this.at + 1);
  }

  /** What a save of the questions changes: what is asked now stays as it is where it is still asked. @param {{mistake: string}} told */
  async saved(told) {
    $("mistake").hidden = !told.mistake;
    $("mistake").textContent = told.mistake;
    if (told.mistake || !(await this.#load())) return;
    if (this.isOver || this.at >= this.count) return this.#to(this.at);
    const task = await this.host.task(this.at).catch(unanswered);
    if (JSON.stringify(task) !== JSON.stringify(this.task)) await this.#to(this.at);
    else $("place").textContent = `${this.at + 1} of ${this.count}: ${task.place}`;
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
    this.#keep(blank.blank, given);
    const isOver = !hint || (this.tries?.length ?? 0) >= TRIES;
    if (!isOver) return void ($("hint").textContent = hint.text);
    const { number, question, could, again, level, units } = this.task;
    const answer = { exercise: number, blank: blank.blank, question, right: blank.right, tries: this.tries };
    const whole = { ...answer, could: blank.blank === 1 ? could : [], ...(again ? { again } : {}) };
    this.given.push({ answer: whole, dealt: this.lesson?.dealt, level, units });
    for (const part of this.picture.parts.values()) part.classList.remove("option", "tried");
    this.#ask(hint ? `${hint.text} The answer is ${blank.right}.` : `Right: ${given}.`);
  }

  /** Has an answer kept where that is done, each behind the one before; says so where it cannot be. @param {number} blank @param {string} given */
  #keep(blank, given) {
    const host = this.host;
    if (!("keep" in host)) return;
    const one = { digest: this.lesson?.digest ?? "", exercise: this.task.number, blank, given };
    this.keeping = this.keeping.then(async () => {
      const { refused } = await host.keep(one).catch(() => ({ refused: `This answer is not kept. ${unanswered().refused}` }));
      this.#warn(refused ?? "");
      document.body.dataset.kept = String(Number(document.body.dataset.kept ?? 0) + 1);
    });
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
    $("next").textContent = this.at + 1 < this.count ? "Next" : "To the end";
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

  /** How many were right at once, and where the answers are, or else the file to hand in. */
  #end() {
    const right = this.given.filter((one) => !one.answer.tries[0].held).length, kept = this.lesson?.kept;
    this.isOver = true;
    $("place").textContent = this.given.length ? `${right} of ${this.given.length} right at once` : "All are answered already";
    for (const id of ["about", "prompt", "asked"]) $(id).textContent = "";
    for (const id of ["supposed", "onward", "parts"]) $(id).hidden = true;
    $("typed").hidden = true;
    for (const id of ["pane", "options"]) $(id).replaceChildren();
    if (kept) $("hint").textContent = `The answers are in ${kept}.`;
    else $("hint").replaceChildren(this.#handedIn());
    document.body.dataset.shown = "end";
  }

  #handedIn() {
    const link = document.createElement("a");
    link.id = "results";
    link.download = "results.yaml";
    link.textContent = "Save my answers, to be handed in";
    link.href = URL.createObjectURL(new Blob([this.results()], { type: "text/yaml" }));
    return link;
  }

  /** What was answered as a file of results, a sitting to each level, units and version of the questions. */
  results() {
    const day = new Date(), pad = (/** @type {number} */ part) => String(part).padStart(2, "0");
    const on = `${day.getFullYear()}-${pad(day.getMonth() + 1)}-${pad(day.getDate())}`;
    const sittings = new Map();
    for (const { answer, dealt, level, units } of this.given) {
      const key = JSON.stringify([level, units, dealt]);
      if (!sittings.has(key)) sittings.set(key, { day: on, ...(dealt ? { dealt } : {}), level, units, answers: [] });
      sittings.get(key).answers.push(answer);
    }
    return `${JSON.stringify({ [this.lesson?.key ?? ""]: 1, sittings: [...sittings.values()] }, null, 1)}\n`;
  }
}

const host = lessonHost(), tasks = new Tasks(host);
await tasks.begin();
document.body.dataset.ready = "yes";
if ("follow" in host) host.follow((told) => tasks.saved(told));
