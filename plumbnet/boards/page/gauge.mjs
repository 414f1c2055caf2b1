// The ladder as one upright column: what stands cold, the limit, what opens, where it settles.

/** @typedef {import("./hosts.mjs").HeaterAnswer} HeaterAnswer */

export const SVG_NS = "http://www.w3.org/2000/svg";
const LEFT = 24, WIDE = 42, TOP = 12, FOOT = 24, LINE = 30;

/** @param {string} name @param {Record<string, string | number>} values @param {string} [text] */
function element(name, values, text) {
  const made = document.createElementNS(SVG_NS, name);
  for (const [key, value] of Object.entries(values)) made.setAttribute(key, String(value));
  if (text !== undefined) made.textContent = text;
  return made;
}

/** The words beside the column, equal numbers in one line. @param {HeaterAnswer} heater */
function labels(heater) {
  /** @type {Map<number, {words: string[], isEnd: boolean}>} */
  const found = new Map();
  const add = (/** @type {number | null} */ value, /** @type {string} */ words, isEnd = false) => {
    if (value === null) return;
    const line = found.get(value) ?? { words: [], isEnd: false };
    if (!line.words.includes(words)) line.words.push(words);
    line.isEnd ||= isEnd;
    found.set(value, line);
  };
  add(heater.end, heater.needle, true);
  add(heater.limit, "limit");
  add(heater.cold, "cold");
  for (const [name, opens, role] of heater.ladder) if (!found.get(opens)?.isEnd) add(opens, role.includes("safety") ? "relief" : name);
  return [...found].map(([value, line]) => ({ value, ...line })).sort((a, b) => b.value - a.value);
}

/** Cuts words to the room that they have. @param {SVGElement} text @param {number} room */
function shorten(text, room) {
  const words = /** @type {SVGTextElement} */ (text), last = /** @type {Text} */ (words.lastChild);
  while (words.getComputedTextLength() > room && last.data.length > 4) last.data = `${last.data.replace(/…$/, "").slice(0, -1)}…`;
}

/**
 * Paints the column of a heater; empty without one.
 * @param {SVGSVGElement} column @param {HeaterAnswer | undefined} heater @param {string} unit @param {number} top highest on the scale
 */
export function paintGauge(column, heater, unit, top) {
  column.replaceChildren();
  if (!heater) return column.removeAttribute("aria-label");
  const box = column.getBoundingClientRect(), wide = Math.max(220, box.width), high = Math.max(260, box.height);
  column.setAttribute("viewBox", `0 0 ${wide} ${high}`);
  const y = (/** @type {number} */ value) => high - FOOT - (high - TOP - FOOT) * Math.min(1, Math.max(0, value) / top);
  const cold = heater.cold ?? 0;
  column.append(
    element("rect", { class: "tube", x: LEFT, y: TOP, width: WIDE, height: high - TOP - FOOT }),
    element("rect", { class: "water", x: LEFT + 3, y: y(cold), width: WIDE - 6, height: Math.max(0, high - FOOT - 2 - y(cold)) }),
  );
  if (heater.end !== null && heater.end > cold)
    column.append(element("rect", { class: "rise", x: LEFT + 3, y: y(heater.end), width: WIDE - 6, height: y(cold) - y(heater.end) }));
  for (const by of [-2, 2]) column.append(element("path", { class: "limit", d: `M${LEFT - 8} ${y(heater.limit) + by}h${WIDE + 16}` }));
  let last = -Infinity;
  const lines = labels(heater), shown = lines.slice(0, Math.max(3, Math.floor((high - TOP) / LINE)));
  for (const [at, line] of shown.entries()) {
    const rest = shown.length - 1 - at, own = y(line.value);
    const text = Math.min(Math.max(own, last + LINE), high - 8 - rest * LINE);
    last = text;
    if (line.isEnd) column.append(element("path", { class: "needle", d: `M${LEFT + WIDE} ${own}l17 -10v20z` }));
    column.append(element("path", { class: "lead", d: `M${LEFT + WIDE + (line.isEnd ? 18 : 3)} ${own}L${LEFT + WIDE + 28} ${text}` }));
    const words = element("text", { x: LEFT + WIDE + 32, y: text + (line.isEnd ? 10 : 6), class: line.isEnd ? "end" : "rung" });
    words.append(element("tspan", { class: "value" }, String(line.value)), ` ${line.words.join(", ")}`);
    column.append(words);
    shorten(words, wide - LEFT - WIDE - 34);
  }
  const end = heater.end === null ? "nothing opens" : `when all is hot ${heater.end}`;
  column.setAttribute("aria-label", `Cold ${heater.cold ?? "no water"}, limit ${heater.limit}, ${end} ${unit}`);
}
