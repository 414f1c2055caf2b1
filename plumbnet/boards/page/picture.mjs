// The schematic: what a state makes of it, by classes alone; when something is put in, parts glide to their new places.

import { SVG_NS } from "./gauge.mjs";

/** @typedef {import("./hosts.mjs").Answer} Answer */
/** @typedef {import("./hosts.mjs").HeaterAnswer} HeaterAnswer */

const GLIDE_MS = 500;
const HATCHES = { trapped: "M-1 8L8-1M-1 1L1-1M6 8L8 6", controlled: "M0 3.5H7", sealed: "M-1 8L8-1M-1 1L1-1M6 8L8 6M-1-1L8 8", "on-demand": "M2.5 3h1" };
const isStill = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

export class Picture {
  /** @param {HTMLElement} pane */
  constructor(pane) {
    this.pane = pane;
    /** @type {Map<string, SVGGElement>} */
    this.parts = new Map();
    /** @type {any} */
    this.places = null;
  }

  /** Takes a picture in: its elements by the names of their parts. @param {any} places */
  show(places) {
    const before = new Map([...this.parts].map(([name, part]) => [name, part.getBoundingClientRect()]));
    const parsed = new DOMParser().parseFromString(places.svg, "image/svg+xml").documentElement;
    this.svg = /** @type {SVGSVGElement} */ (/** @type {unknown} */ (document.importNode(parsed, true)));
    this.svg.id = "picture";
    this.svg.setAttribute("role", "group");
    this.svg.setAttribute("aria-label", "Schematic. Tab follows the water from the supply.");
    this.svg.prepend(hatches());
    this.pane.replaceChildren(this.svg);
    this.places = places;
    this.parts = new Map();
    for (const part of /** @type {NodeListOf<SVGGElement>} */ (this.svg.querySelectorAll(".part")))
      this.parts.set(places.order[Number(part.dataset.part)], part);
    this.kinds = new Map(places.parts);
    this.#glideFrom(before);
  }

  /** @param {Map<string, DOMRect>} before */
  #glideFrom(before) {
    if (!before.size || isStill()) return;
    const scale = this.svg?.getScreenCTM()?.a || 1;
    for (const [name, part] of this.parts) {
      const was = before.get(name), now = part.getBoundingClientRect();
      const frames = was
        ? [{ transform: `translate(${(was.x - now.x) / scale}px, ${(was.y - now.y) / scale}px)` }, { transform: "none" }]
        : [{ opacity: 0 }, { opacity: 1 }];
      part.animate(frames, { duration: GLIDE_MS, easing: "ease-in-out" });
    }
    for (const layer of this.svg?.querySelectorAll(".pipes, .dots, .zone, .way") ?? [])
      layer.animate([{ opacity: 0 }, { opacity: 1 }], { duration: GLIDE_MS, easing: "ease-in" });
  }

  /** Shows a state. @param {Answer} answer @param {HeaterAnswer | undefined} heater @param {Set<string>} touched */
  paint(answer, heater, touched) {
    for (const [name, part] of this.parts) {
      const symbol = answer.symbols[name];
      const variants = /** @type {NodeListOf<SVGGElement>} */ (part.querySelectorAll(".variant"));
      const shown = [...variants].find((each) => each.dataset.symbol === symbol) ?? variants[0];
      for (const each of variants) each.classList.toggle("hidden", each !== shown);
      part.classList.toggle("stops", !!heater?.stops.includes(name));
      part.classList.toggle("stops-other", answer.stops.includes(name) && !heater?.stops.includes(name));
      part.classList.toggle("faulty", answer.faults.includes(name));
      part.classList.toggle("cut-off", answer.cut_off.includes(name));
      part.classList.toggle("touched", touched.has(name));
    }
    for (const word of this.svg?.querySelectorAll("text.verdict") ?? []) word.textContent = "";
    for (const each of answer.heaters) {
      const word = this.parts.get(each.name)?.querySelector("text.verdict");
      if (word) word.textContent = each.verdict.toUpperCase();
      word?.setAttribute("class", `verdict v-${each.verdict}`);
    }
    const zone = this.svg?.querySelector(".zone");
    zone?.setAttribute("class", heater ? `zone v-${heater.verdict}` : "zone");
    const data = heater && heater.verdict !== "open" ? this.zone(heater.zone) : "";
    for (const path of zone?.children ?? []) path.setAttribute("d", data);
    zone?.querySelector(".hatch")?.setAttribute("fill", heater ? `url(#hatch-${heater.verdict})` : "none");
    this.svg?.querySelector(".way")?.setAttribute("d", heater?.way.length ? this.#along(heater.way) : "");
  }

  /** The outline of a zone from its bits: pipes, then parts, each in the order of the layout. @param {string} bits */
  zone(bits) {
    const set = BigInt(`0x${bits}`), { pipes, tips, parts, runs } = this.places.zone, count = this.places.pipes.length;
    const has = (/** @type {number} */ at) => ((set >> BigInt(at)) & 1n) === 1n;
    const inside = new Set(this.places.parts.filter((/** @type {any} */ _, /** @type {number} */ at) => has(count + at)).map((/** @type {any} */ one) => one[0]));
    const boxes = [];
    for (const [number, own] of Object.entries(pipes)) if (has(Number(number))) boxes.push(...own);
    for (const [number, part, box] of tips) if (has(number) && inside.has(part)) boxes.push(box);
    for (const [part, box] of Object.entries(parts)) if (inside.has(part)) boxes.push(box);
    for (const [part, own] of Object.entries(runs)) if (inside.has(part)) boxes.push(...own);
    return boxes.map(([left, top, right, bottom]) => `M${left} ${top}H${right}V${bottom}H${left}Z`).join("");
  }

  /** @param {string[]} way */
  #along(way) {
    const points = [];
    for (let at = 1; at < way.length; at++) {
      const number = this.places.pipes.findIndex((/** @type {string[]} */ ends) => ends.includes(way[at]) && ends.includes(way[at - 1]));
      const line = this.places.lines[number];
      if (line) points.push(...(this.places.pipes[number][0] === way[at - 1] ? line : [...line].reverse()));
    }
    return points.length ? `M${points.map((point) => point.join(" ")).join("L")}` : "";
  }

  /** Height on the screen of what is so high in the picture. @param {number} units */
  pixels(units) {
    return units * (this.svg?.getScreenCTM()?.a ?? 1);
  }

  /** Comes closer to the water of a heater and to what stops it, or goes back. @param {HeaterAnswer | null} heater */
  closer(heater) {
    const [left, top, right, bottom] = this.places.box;
    if (!heater) return this.#glideTo([left, top, right - left, bottom - top]);
    const probe = document.createElementNS(SVG_NS, "path");
    probe.setAttribute("d", this.zone(heater.zone));
    this.svg?.append(probe);
    const boxes = [probe.getBBox(), ...[heater.name, ...this.#atEdge(heater)].flatMap((name) => this.parts.get(name)?.getBBox() ?? [])];
    probe.remove();
    const l = Math.min(...boxes.map((b) => b.x)) - 16, t = Math.min(...boxes.map((b) => b.y)) - 16;
    const r = Math.max(...boxes.map((b) => b.x + b.width)) + 16, f = Math.max(...boxes.map((b) => b.y + b.height)) + 16;
    this.#glideTo([l, t, r - l, f - t]);
  }

  /** The devices that stop the water at the edge of its zone. @param {HeaterAnswer} heater */
  #atEdge(heater) {
    const set = BigInt(`0x${heater.zone}`);
    const met = this.places.pipes.flatMap((/** @type {string[]} */ ends, /** @type {number} */ at) => ((set >> BigInt(at)) & 1n ? ends : []));
    return heater.stops.filter((name) => met.includes(name));
  }

  /** Shows all of it at once, as on paper. */
  whole() {
    const [left, top, right, bottom] = this.places.box;
    this.svg?.setAttribute("viewBox", [left, top, right - left, bottom - top].join(" "));
  }

  /** @param {number[]} to */
  #glideTo(to) {
    const svg = /** @type {SVGSVGElement} */ (this.svg);
    const from = (svg.getAttribute("viewBox") ?? "").split(" ").map(Number), begun = performance.now();
    if (isStill()) return svg.setAttribute("viewBox", to.join(" "));
    const step = (/** @type {number} */ now) => {
      const share = Math.min(1, Math.max(0, now - begun) / GLIDE_MS), eased = share * share * (3 - 2 * share);
      svg.setAttribute("viewBox", from.map((value, at) => (value + (to[at] - value) * eased).toFixed(1)).join(" "));
      if (share < 1) requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }
}

function hatches() {
  const defs = document.createElementNS(SVG_NS, "defs");
  for (const [verdict, data] of Object.entries(HATCHES)) {
    const pattern = document.createElementNS(SVG_NS, "pattern"), path = document.createElementNS(SVG_NS, "path");
    const values = { id: `hatch-${verdict}`, class: `v-${verdict}`, width: 7, height: 7, patternUnits: "userSpaceOnUse" };
    for (const [key, value] of Object.entries(values)) pattern.setAttribute(key, String(value));
    path.setAttribute("d", data);
    pattern.append(path);
    defs.append(pattern);
  }
  return defs;
}
