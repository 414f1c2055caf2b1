// States as short codes in the address: what was touched, in order, behind the digest of the file they belong to.

/** @typedef {{at: number, option?: number, number?: number, value?: number}} Touch */

/** @param {Touch[]} touches @returns {string} */
export function codeOf(touches) {
  return touches.map((one) => (one.option !== undefined ? `${one.at}-${one.option}` : `${one.at}=${one.number}=${one.value}`)).join(",");
}

/** @param {string} code @returns {Touch[] | null} null where this is no code */
export function touchesOf(code) {
  const found = [];
  for (const word of code ? code.split(",") : []) {
    const read = /^(\d{1,6})(?:-(\d{1,3})|=(\d{1,3})=(-?\d{1,9}(?:\.\d{1,6})?))$/.exec(word);
    if (!read) return null;
    found.push(read[2] !== undefined ? { at: +read[1], option: +read[2] } : { at: +read[1], number: +read[3], value: +read[4] });
  }
  return found;
}

/**
 * The touches with one more: of one thing only the last counts.
 * @param {Touch[]} touches @param {Touch} touch @returns {Touch[]}
 */
export function withTouch(touches, touch) {
  return [...touches.filter((one) => one.at !== touch.at || one.number !== touch.number), touch];
}

/** @param {Touch[]} touches @param {number} at @param {number | undefined} number @returns {Touch[]} */
export function withoutTouch(touches, at, number) {
  return touches.filter((one) => one.at !== at || one.number !== number);
}
