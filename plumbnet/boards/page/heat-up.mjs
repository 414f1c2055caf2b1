// The heat-up played: the water pushes out of the heater to what stops it, then the clock runs and the needle climbs.

import { paintGauge } from "./gauge.mjs";
import { isStill } from "./picture.mjs";

/**
 * @typedef {object} Course
 * @property {number[]} minutes
 * @property {number[]} temperature
 * @property {number[]} pressure
 * @property {number[]} out
 * @property {Record<string, string>} units
 * @property {[number, string][]} happens
 */

const PUSH_MS = 3000, RUN_MS = 17000, STEPS = 1000;
const SIGNS = { degF: "°F", degC: "°C" };

class HeatUp {
  #at = 0;
  #begun = 0;
  #frame = 0;

  /**
   * @param {Course} course
   * @param {{rush: (share: number | null) => void, stand: (pressure: number) => void, tell: (words: string) => void, moved: (at: number, isPlaying: boolean) => void}} show
   */
  constructor(course, show) {
    this.course = course;
    this.show = show;
  }

  /** From the start; where motion is not wanted it stands at the first frame, and goes on by `next`. */
  play() {
    if (this.#at >= 1) this.#at = 0;
    if (isStill()) return this.stand(this.#at);
    this.#begun = performance.now() - this.#at * (PUSH_MS + RUN_MS);
    const step = (/** @type {number} */ now) => {
      this.stand((now - this.#begun) / (PUSH_MS + RUN_MS), true);
      if (this.#at < 1) this.#frame = requestAnimationFrame(step);
      else this.pause();
    };
    this.#frame = requestAnimationFrame(step);
  }

  pause() {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    this.show.moved(this.#at, false);
  }

  get isPlaying() {
    return this.#frame !== 0;
  }

  /** Stands at a share of the whole: first the push, then the clock. @param {number} share @param {boolean} [isPlaying] */
  stand(share, isPlaying = false) {
    this.#at = Math.min(1, Math.max(0, share));
    const pushed = (this.#at * (PUSH_MS + RUN_MS)) / PUSH_MS;
    this.show.rush(pushed < 1 ? pushed : null);
    const at = this.#place((this.#at * (PUSH_MS + RUN_MS) - PUSH_MS) / RUN_MS);
    this.show.stand(this.course.pressure[at]);
    this.show.tell(pushed < 1 ? "The water swells, and pushes wherever it can." : this.words(at));
    this.show.moved(this.#at, isPlaying);
  }

  /** Goes on to what happens next, or to the end. */
  next() {
    this.pause();
    const shares = [PUSH_MS / (PUSH_MS + RUN_MS), ...this.course.happens.map(([minute]) => this.#shareAt(minute)), 1];
    this.stand(shares.find((share) => share > this.#at + 1e-6) ?? 1);
  }

  /** The number of the moment at a share of the clock. @param {number} share */
  #place(share) {
    const { minutes } = this.course, last = minutes.length - 1;
    const wanted = minutes[last] * Math.max(0, share) + 1e-9;
    let low = 0, high = last;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (minutes[middle] <= wanted) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** @param {number} minute */
  #shareAt(minute) {
    const end = this.course.minutes.at(-1) || 1;
    return (PUSH_MS + (minute / end) * RUN_MS) / (PUSH_MS + RUN_MS);
  }

  /** What a gauge, a thermometer and a bucket say at a moment, and what happened last. @param {number} at */
  words(at) {
    const { minutes, temperature, pressure, out, units, happens } = this.course;
    const last = happens.filter(([minute]) => minute <= minutes[at] + 1e-6).at(-1);
    const sign = SIGNS[/** @type {keyof typeof SIGNS} */ (units.temperature)] ?? units.temperature;
    const lost = out[at] > 0 ? `, ${out[at].toPrecision(2)} ${units.volume} let out` : "";
    const now = `${minutes[at].toFixed(minutes[at] < 10 ? 1 : 0)} min: ${temperature[at].toFixed(0)} ${sign}, ${pressure[at].toFixed(0)} ${units.pressure}${lost}`;
    return last ? `${now}. After ${last[0].toFixed(last[0] < 10 ? 1 : 0)} min: ${last[1]}.` : `${now}.`;
  }
}

/** The heat-up on a page: its buttons, its slider and its words, beside the picture and the gauge. */
export class HeatUpStrip {
  /** @type {HeatUp | null} */
  #heating = null;

  /** @param {import("./picture.mjs").Picture} picture */
  constructor(picture) {
    this.picture = picture;
    this.at("play").onclick = () => (this.#heating?.isPlaying ? this.#heating.pause() : this.#heating?.play());
    this.at("next-event").onclick = () => this.#heating?.next();
    this.at("moment").oninput = () => {
      const share = Number(this.at("moment").value) / STEPS;
      this.#heating?.pause();
      this.#heating?.stand(share);
    };
  }

  /** @param {string} id @returns {any} */
  at(id) {
    return document.getElementById(id);
  }

  get isShown() {
    return !this.at("heating").hidden;
  }

  /**
   * Shows a course and makes it ready, at its start; why there is none where it was refused.
   * @param {Course & {refused?: string}} course @param {import("./hosts.mjs").HeaterAnswer} heater
   * @param {string} unit @param {number} top highest on the gauge @param {() => void} [seen] called once it is halted or over
   * @returns {HeatUp | null}
   */
  show(course, heater, unit, top, seen = () => {}) {
    this.#heating?.pause();
    this.at("heating").hidden = false;
    const isRefused = course.refused !== undefined;
    for (const id of ["play", "next-event", "moment"]) this.at(id).hidden = isRefused;
    if (isRefused) {
      this.at("moment-words").textContent = course.refused;
      return null;
    }
    const highest = Math.max(top, 1.07 * Math.max(...course.pressure));
    this.#heating = new HeatUp(course, {
      rush: (share) => this.picture.rush(heater.name, share),
      stand: (pressure) => paintGauge(this.at("column"), { ...heater, end: Math.round(pressure * 10) / 10, needle: "now" }, unit, highest),
      tell: (words) => (this.at("moment-words").textContent = words),
      moved: (at, isPlaying) => {
        this.at("moment").value = String(Math.round(at * STEPS));
        this.at("play").textContent = isPlaying ? "Pause" : at < 1 ? "Play" : "Again";
        if (!isPlaying) seen();
      },
    });
    return this.#heating;
  }

  /** Puts it away. */
  away() {
    this.#heating?.pause();
    this.#heating = null;
    this.at("heating").hidden = true;
    if (this.picture.svg) this.picture.rush("", null);
  }
}
