// The board itself: a state, its answer, its picture; touching, undoing, and what is said of it.

import { codeOf, touchesOf, withTouch, withoutTouch } from "./touch-code.mjs";
import { hostOf } from "./hosts.mjs";
import { paintGauge } from "./gauge.mjs";
import { AddressPast, OwnPast } from "./past.mjs";
import { Picture } from "./picture.mjs";
import { HeatUpStrip } from "./heat-up.mjs";
import { made, openMenu } from "./menu.mjs";
import { unanswered } from "./served.mjs";

/** @typedef {import("./touch-code.mjs").Touch} Touch */
/** @typedef {import("./hosts.mjs").Answer} Answer */

const WORST_FIRST = ["sealed", "trapped", "controlled", "on-demand", "open"];
const LEGIBLE_PX = 16, LETTERS = 16;
const $ = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));

class Board {
  /** @type {Touch[]} */
  touches = [];
  /** @type {Answer | null} */
  answer = null;
  heater = "";
  /** Steps made and undone, for the browser does not tell. */
  step = 0;
  steps = 0;
  question = 0;
  pictureKey = "none";
  top = 1;

  /** @param {any} host */
  constructor(host) {
    this.host = host;
    this.past = host.isFramed ? new OwnPast() : new AddressPast();
    this.picture = new Picture($("pane"));
    this.strip = new HeatUpStrip(this.picture);
  }

  async begin() {
    await this.#load();
    const touches = this.#touchesOf(this.past.said());
    this.past.put(this.#word(touches ?? []), 0, true);
    await this.show(touches ?? []);
    if (touches === null) this.#tell("This address is of another version of the file, and is not shown. Here it is as drawn.");
    if (this.picture.pixels(LETTERS) < LEGIBLE_PX && innerWidth > 800) this.#closer(true);
    document.body.dataset.ready = "yes";
  }

  async #load() {
    this.board = await this.host.board();
    $("record").textContent = `${this.board.rules} · file ${this.board.file}`;
    this.#list();
  }

  /** The touches that a word names; null where it is of another file. @param {string} word @returns {Touch[] | null} */
  #touchesOf(word) {
    const [digest, code] = word.split(":");
    if (!digest) return [];
    const touches = touchesOf(code ?? "");
    return digest === this.board.digest && touches?.every((one) => this.#knows(one)) ? touches : null;
  }

  /** @param {Touch} touch */
  #knows(touch) {
    const one = this.board.touchables[touch.at];
    return one !== undefined && (touch.option !== undefined ? touch.option < one.options.length : (touch.number ?? 0) < one.numbers.length);
  }

  /** Whether anything of a thing can be touched here: a copy holds some only. @param {number} at */
  #isHeld(at) {
    const one = this.board.touchables[at];
    return [...one.numbers, ...one.options].some((each) => each.held !== false);
  }

  /** @param {Touch[]} touches */
  #word(touches) {
    return touches.length ? `${this.board.digest}:${codeOf(touches)}` : "";
  }

  /** A new state, which can be undone. @param {Touch[]} touches @param {string} words @param {boolean} [isSame] whether it only goes on with the last */
  async go(touches, words, isSame = false) {
    if (codeOf(touches) === codeOf(this.touches)) return;
    if (!isSame) this.steps = ++this.step;
    this.past.put(this.#word(touches), this.step, isSame);
    await this.show(touches, words);
  }

  /** Asks what a state comes to and shows it; of several questions only the last counts. @param {Touch[]} touches @param {string} [words] */
  async show(touches, words = "") {
    const question = ++this.question;
    this.#cool();
    this.touches = touches;
    this.#buttons();
    const found = await this.host.answer(codeOf(touches)).catch(unanswered);
    if (!found || question !== this.question) return;
    if ("refused" in found) return this.#refused(found.refused, words);
    if (found.picture !== this.pictureKey) {
      const places = await this.host.picture(found.picture).catch(unanswered);
      if (question !== this.question) return;
      if (places.refused) return this.#refused(places.refused, words);
      this.picture.show(places);
      this.pictureKey = found.picture;
      this.#makeTouchable();
    }
    this.answer = found;
    if (!found.heaters.some((/** @type {any} */ one) => one.name === this.heater)) this.heater = this.#worst(found);
    this.paint(words);
    document.body.dataset.shown = codeOf(touches) || "drawn";
  }

  /** @param {Answer} answer */
  #worst(answer) {
    const ranked = [...answer.heaters].sort((a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict));
    return ranked[0]?.name ?? "";
  }

  get chosen() {
    return this.answer?.heaters.find((one) => one.name === this.heater);
  }

  /** @param {string} [words] what was done, to be spoken */
  paint(words = "") {
    const answer = /** @type {Answer} */ (this.answer), heater = this.chosen;
    const touched = new Set(this.touches.map((one) => this.board.touchables[one.at].name));
    this.picture.paint(answer, heater, touched);
    $("answer").className = heater ? `v-${heater.verdict}` : "";
    $("verdict").textContent = heater ? heater.verdict.toUpperCase() : "";
    $("sentence").textContent = this.sentence();
    $("touched").replaceChildren(...this.#touchedWords());
    $("whose").textContent = heater ? `${heater.name}, ${this.board.unit}` : "";
    this.top = Math.max(this.top, 1.07 * Math.max(...answer.heaters.flatMap((one) => [one.cold ?? 0, one.limit, one.end ?? 0, ...one.ladder.map((rung) => rung[1])])));
    paintGauge($("column"), heater, this.board.unit, this.top);
    this.#labels();
    if ($("whole").getAttribute("aria-pressed") === "true") this.#walk();
    else $("walk").hidden = true;
    $("spoken").textContent = `${words ? `${words}. ` : ""}${heater ? `${$("verdict").textContent}. ${this.sentence()}` : this.sentence()}`;
  }

  sentence() {
    const heater = this.chosen;
    if (!heater) return "Nothing heats water here.";
    const name = (this.answer?.heaters.length ?? 0) > 1 ? `${heater.name}: ` : "";
    const fault = heater.by_fault ? " A fault keeps it so, and a fault is no cure." : "";
    return `${name}${heater.sentence}${fault}`;
  }

  /** @param {string} why @param {string} words */
  #refused(why, words) {
    $("answer").className = "refused";
    $("verdict").textContent = "CANNOT BE";
    $("sentence").textContent = why;
    $("touched").replaceChildren(...this.#touchedWords());
    $("spoken").textContent = `${words}. ${why}`;
    document.body.dataset.shown = codeOf(this.touches) || "drawn";
  }

  /** @param {Touch} touch @returns {string} */
  words(touch) {
    const one = this.board.touchables[touch.at];
    if (touch.option !== undefined) return `${one.name}: ${one.options[touch.option].words}`;
    const number = one.numbers[touch.number ?? 0];
    return `${one.name}: ${number.words} ${touch.value} ${number.unit}`;
  }

  #touchedWords() {
    if (!this.touches.length) return ["As drawn. Touch a valve, a device, a tank, a pipe."];
    return this.touches.flatMap((touch) => {
      const option = touch.option === undefined ? null : this.board.touchables[touch.at].options[touch.option];
      const words = `${this.words(touch)}${option?.sort === "fault" ? " (a fault)" : ""}`;
      const one = made("button", { textContent: words, className: option?.sort ?? "number", title: "take it back" });
      one.onclick = () => this.go(withoutTouch(this.touches, touch.at, touch.number), `${this.board.touchables[touch.at].name} as drawn`);
      return [one, " "];
    });
  }

  /** How a touchable stands now, in words. @param {number} at */
  #stands(at) {
    const words = this.touches.filter((one) => one.at === at).map((one) => this.words(one).split(": ").slice(1).join(": "));
    return words.join(", ") || this.board.touchables[at].now;
  }

  /** Makes the parts and pipes of a new picture answer to finger, mouse and keys. */
  #makeTouchable() {
    const { parts, pipes } = this.picture.places.touch_of;
    const bind = (/** @type {Element} */ element, /** @type {() => void} */ act) => {
      element.setAttribute("role", "button");
      element.setAttribute("tabindex", "0");
      element.addEventListener("click", act);
      element.addEventListener("keydown", (/** @type {any} */ event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        act();
      });
    };
    for (const [name, part] of this.picture.parts)
      if (parts[name] !== undefined && this.#isHeld(parts[name])) {
        part.classList.add("touchable");
        bind(part, () => this.touch(parts[name], part, name));
      } else part.setAttribute("role", "img");
    for (const hit of this.picture.svg?.querySelectorAll(".pipe-hit") ?? []) {
      const at = pipes[hit.getAttribute("data-pipe") ?? ""];
      if (at === undefined || !this.#isHeld(at)) hit.remove();
      else bind(hit, () => this.touch(at, hit, ""));
    }
  }

  #labels() {
    const { parts, pipes } = this.picture.places.touch_of;
    const kinds = this.picture.kinds ?? new Map();
    for (const [name, part] of this.picture.parts) {
      const heater = this.answer?.heaters.find((one) => one.name === name), at = parts[name];
      const visible = [...part.querySelectorAll(".name")].map((line) => line.textContent).join("") || name;
      const stands = at === undefined ? "" : `: ${this.#stands(at)}`;
      const stops = part.classList.contains("stops") ? ", stops the water" : "";
      const off = part.classList.contains("cut-off") ? ", cut off" : "";
      part.setAttribute("aria-label", `${visible}${heater ? ` ${heater.verdict.toUpperCase()}` : ""}, ${kinds.get(name) ?? "quiet parts"}${stands}${stops}${off}`);
    }
    for (const hit of this.picture.svg?.querySelectorAll(".pipe-hit") ?? []) {
      const at = pipes[hit.getAttribute("data-pipe") ?? ""];
      hit.setAttribute("aria-label", `${this.board.touchables[at].name}: ${this.#stands(at)}`);
    }
    for (const one of $("list").querySelectorAll("button[data-at]")) {
      one.lastChild.textContent = this.#stands(Number(one.dataset.at));
      one.classList.toggle("on", this.touches.some((touch) => touch.at === Number(one.dataset.at)));
    }
  }

  /** The same in a list, for a finger on a narrow screen. */
  #list() {
    const buttons = this.board.touchables.flatMap((/** @type {any} */ one, /** @type {number} */ at) => {
      if (!this.#isHeld(at) || (one.pipe && this.host.isLive)) return [];
      const button = made("button", {}, one.name, made("small", { textContent: one.now }));
      button.dataset.at = String(at);
      button.onclick = () => this.touch(at, button, one.name);
      return [button];
    });
    $("list").replaceChildren(...buttons);
  }

  /** @param {number} at @param {Element} from @param {string} name */
  touch(at, from, name) {
    const one = this.board.touchables[at], option = this.touches.find((touch) => touch.at === at && touch.option !== undefined)?.option;
    const isHeater = (this.answer?.heaters.length ?? 0) > 1 && this.answer?.heaters.some((each) => each.name === name);
    const held = one.options.flatMap((/** @type {any} */ each, /** @type {number} */ place) => (each.held === false ? [] : [place]));
    const numbers = one.numbers.some((/** @type {any} */ each) => each.held !== false);
    if (held.length === 1 && !numbers && (!one.pipe || !this.host.isLive) && !isHeater) return this.#choose(at, option === undefined ? held[0] : null);
    const others = isHeater && name !== this.heater ? [["show this heater", () => this.choose(name)]] : [];
    openMenu($("menu"), one, at, this.touches, from, {
      choose: (chosen) => this.#choose(at, chosen),
      alter: (number, value) => this.#alter(at, number, value),
      others: /** @type {[string, () => void][]} */ (others),
    });
  }

  /** @param {string} name */
  choose(name) {
    this.#cool();
    this.heater = name;
    this.paint(`${name} is shown`);
  }

  /** @param {number} at @param {number | null} option */
  #choose(at, option) {
    const one = this.board.touchables[at];
    const touches = option === null ? withoutTouch(this.touches, at, undefined) : withTouch(this.touches, { at, option });
    this.go(touches, `${one.name}: ${option === null ? one.now : one.options[option].words}`);
  }

  /** @param {number} at @param {number} number @param {number | null} value */
  #alter(at, number, value) {
    const last = this.touches.at(-1), goesOn = last?.at === at && last.number === number && value !== null;
    const touches = value === null ? withoutTouch(this.touches, at, number) : withTouch(this.touches, { at, number, value });
    const one = this.board.touchables[at].numbers[number];
    this.go(touches, `${this.board.touchables[at].name}: ${one.words} ${value ?? one.value} ${one.unit}`, goesOn);
  }

  #buttons() {
    $("undo").disabled = this.step <= 0;
    $("redo").disabled = this.step >= this.steps;
    $("drawn").disabled = $("copy").disabled = !this.touches.length;
    $("whole").hidden = $("heat").hidden = !this.host.isLive;
  }

  /** @param {boolean} isOn */
  #closer(isOn) {
    $("closer").setAttribute("aria-pressed", String(isOn));
    this.picture.closer(isOn ? this.chosen ?? null : null);
  }

  async #walk() {
    const question = this.question, heater = this.heater;
    const found = await this.host.walk(codeOf(this.touches), heater).catch(unanswered);
    if (question === this.question && heater === this.heater) $("hops").textContent = found.walk ?? found.refused ?? "";
  }

  /** Lights the heater that is shown, and plays what comes of it. */
  async #heatUp() {
    const question = this.question, heater = this.chosen;
    if (!heater || !("heatUp" in this.host)) return;
    const course = await this.host.heatUp(codeOf(this.touches), heater.name).catch(unanswered);
    if (question !== this.question || heater !== this.chosen) return;
    $("heat").setAttribute("aria-pressed", "true");
    this.strip.show(course, heater, this.board.unit, this.top)?.play();
  }

  /** Puts the heat-up away. */
  #cool() {
    this.strip.away();
    $("heat").setAttribute("aria-pressed", "false");
  }

  /** The state as a scenario of a layout file. */
  scenario() {
    const changes = this.touches.flatMap((touch) => {
      const one = this.board.touchables[touch.at];
      if (touch.option !== undefined) return one.options[touch.option].yaml;
      const [before, behind] = one.numbers[touch.number ?? 0].yaml;
      return [`${before}${touch.value}${behind}`];
    });
    const lines = changes.map((/** @type {string} */ change) => `      - ${change}\n`);
    return `scenarios:\n  touched-on-the-board:\n    change:\n${lines.join("")}`;
  }

  async #copy() {
    const text = this.scenario();
    const isCopied = await navigator.clipboard?.writeText(text).then(() => true, () => false);
    $("hops").textContent = text;
    $("walk").hidden = false;
    $("whole").setAttribute("aria-pressed", "false");
    this.#tell(isCopied ? "Copied: put it at the foot of the file." : "To be copied from below the picture.");
  }

  /** @param {string} words */
  #tell(words) {
    $("spoken").textContent = words;
    $("touched").append(made("span", { className: "told", textContent: ` ${words}` }));
  }

  bind() {
    $("undo").onclick = () => this.past.back();
    $("redo").onclick = () => this.past.on();
    $("drawn").onclick = () => this.go([], "As drawn");
    $("closer").onclick = () => this.#closer($("closer").getAttribute("aria-pressed") !== "true");
    $("copy").onclick = () => this.#copy();
    $("whole").onclick = () => {
      $("walk").hidden = $("whole").getAttribute("aria-pressed") === "true";
      $("whole").setAttribute("aria-pressed", String(!$("walk").hidden));
      if (!$("walk").hidden) this.#walk();
    };
    $("heat").onclick = () => {
      if (!this.strip.isShown) return this.#heatUp();
      this.#cool();
      this.paint();
    };
    const root = document.documentElement, isDark = () => (root.dataset.theme ? root.dataset.theme === "dark" : matchMedia("(prefers-color-scheme: dark)").matches);
    const told = () => ($("theme").textContent = isDark() ? "Light" : "Dark");
    $("theme").onclick = () => {
      root.dataset.theme = isDark() ? "light" : "dark";
      told();
    };
    told();
    this.past.follow((word, step) => {
      this.step = step ?? this.step;
      this.steps = Math.max(this.steps, this.step);
      this.show(this.#touchesOf(word) ?? [], "Gone back or on");
    });
    addEventListener("keydown", (event) => {
      if (!(event.ctrlKey || event.metaKey) || document.activeElement?.tagName === "INPUT") return;
      const key = event.key.toLowerCase();
      if (key === "z" || key === "y") {
        event.preventDefault();
        $(key === "y" || event.shiftKey ? "redo" : "undo").click();
      }
    });
    addEventListener("pointerdown", (event) => {
      if (!$("menu").hidden && !$("menu").contains(event.target)) $("menu").hidden = true;
    });
    addEventListener("beforeprint", () => this.picture.whole());
    addEventListener("afterprint", () => this.#closer($("closer").getAttribute("aria-pressed") === "true"));
    addEventListener("resize", () => this.answer && paintGauge($("column"), this.chosen, this.board.unit, this.top));
  }

  /** What a save of the file changes: the board of the new file, or what is wrong with it beside the last good state. @param {{mistake: string}} told */
  async saved(told) {
    $("mistake").hidden = !told.mistake;
    $("mistake").textContent = told.mistake;
    if (told.mistake) return;
    const before = this.touches.map((touch) => this.words(touch));
    await this.#load();
    const kept = this.board.touchables.flatMap((/** @type {any} */ one, /** @type {number} */ at) => [
      ...one.options.flatMap((/** @type {any} */ option, /** @type {number} */ number) => (before.includes(`${one.name}: ${option.words}`) ? [{ at, option: number }] : [])),
    ]);
    this.pictureKey = "none";
    this.step = this.steps = 0;
    this.past.put(this.#word(kept), 0, true);
    await this.show(kept, "The file was saved");
    document.body.dataset.version = this.board.digest;
  }
}

const host = await hostOf(), board = new Board(host);
board.bind();
await board.begin();
if ("follow" in host) host.follow((told) => board.saved(told));
