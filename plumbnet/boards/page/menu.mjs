// What a touched thing may be instead: a small list of buttons, numbers to be typed or moved by arrows, faults named as such.

/** @typedef {import("./touch-code.mjs").Touch} Touch */
/**
 * @typedef {object} Touchable
 * @property {string} name
 * @property {string} kind
 * @property {string} now
 * @property {boolean} pipe
 * @property {{words: string, sort: string, yaml: string[], held?: boolean}[]} options
 * @property {{words: string, value: number, unit: string, yaml: [string, string], held?: boolean}[]} numbers
 */

/** @param {string} name @param {Partial<HTMLElement> & Record<string, any>} values @param {...(Node | string)} children */
export function made(name, values, ...children) {
  const element = Object.assign(document.createElement(name), values);
  element.append(...children);
  return element;
}

/**
 * Opens the list at a part or a pipe.
 * @param {HTMLElement} menu @param {Touchable} touchable @param {number} at @param {Touch[]} touches
 * @param {Element} from what was touched, to which the focus goes back
 * @param {{choose: (option: number | null) => void, alter: (number: number, value: number | null) => void, others: [string, () => void][]}} act
 */
export function openMenu(menu, touchable, at, touches, from, act) {
  const chosen = touches.find((one) => one.at === at && one.option !== undefined)?.option;
  const close = () => {
    menu.hidden = true;
    if (from.isConnected) /** @type {HTMLElement} */ (from).focus();
  };
  const button = (/** @type {string} */ words, /** @type {boolean} */ isOn, /** @type {() => void} */ press, sort = "") => {
    const one = made("button", { textContent: words, className: sort });
    one.setAttribute("aria-pressed", String(isOn));
    one.onclick = () => {
      close();
      press();
    };
    return one;
  };
  const held = touchable.options.flatMap((option, number) => (option.held === false ? [] : [number]));
  const faults = held.filter((number) => touchable.options[number].sort === "fault");
  const choices = held.filter((number) => touchable.options[number].sort !== "fault");
  const listed = (/** @type {number[]} */ numbers) =>
    numbers.map((number) => button(touchable.options[number].words, chosen === number, () => act.choose(number), touchable.options[number].sort));
  menu.replaceChildren(
    made("p", { textContent: touchable.name, id: "menu-name" }),
    ...(held.length ? [button(touchable.now, chosen === undefined, () => act.choose(null))] : []),
    ...listed(choices),
    ...(faults.length ? [made("p", { textContent: "It may fail:", className: "sort" }), ...listed(faults)] : []),
    ...touchable.numbers.flatMap((number, place) => (number.held === false ? [] : [numberField(number, place, at, touches, act.alter)])),
    ...act.others.map(([words, press]) => button(words, false, press)),
  );
  menu.setAttribute("aria-labelledby", "menu-name");
  menu.hidden = false;
  place(menu, from);
  /** @type {HTMLElement | null} */ (menu.querySelector("button, input"))?.focus();
  menu.onkeydown = (event) => {
    const inside = /** @type {HTMLElement[]} */ ([...menu.querySelectorAll("button, input")]), here = inside.indexOf(/** @type {HTMLElement} */ (document.activeElement));
    const step = { ArrowDown: 1, ArrowUp: inside.length - 1 }[event.key];
    if (event.key === "Escape") close();
    else if (step && document.activeElement?.tagName !== "INPUT") {
      inside[(here + step) % inside.length].focus();
      event.preventDefault();
    }
  };
}

/** @param {Touchable["numbers"][0]} number @param {number} place @param {number} at @param {Touch[]} touches @param {(number: number, value: number | null) => void} alter */
function numberField(number, place, at, touches, alter) {
  const touched = touches.find((one) => one.at === at && one.number === place);
  const input = /** @type {HTMLInputElement} */ (made("input", { type: "number", step: "any", value: String(touched?.value ?? number.value) }));
  const told = () => {
    const value = Number(input.value);
    if (input.value !== "" && Number.isFinite(value)) alter(place, value === number.value ? null : value);
  };
  input.onchange = told;
  input.onkeydown = (event) => {
    const step = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (!step) return;
    event.preventDefault();
    input.value = String(Math.round((Number(input.value) + step) * 1e6) / 1e6);
    told();
  };
  return made("label", { className: "number" }, `${number.words} `, input, ` ${number.unit}`);
}

/** @param {HTMLElement} menu @param {Element} from */
function place(menu, from) {
  const box = from.getBoundingClientRect(), within = /** @type {HTMLElement} */ (menu.parentElement).getBoundingClientRect();
  const left = Math.max(4, Math.min(box.left - within.left, within.width - menu.offsetWidth - 4));
  const below = box.bottom - within.top + 4, above = box.top - within.top - menu.offsetHeight - 4;
  const room = Math.max(within.height, window.innerHeight - within.top) - menu.offsetHeight - 4;
  menu.style.left = `${left}px`;
  menu.style.top = `${below <= room ? below : Math.max(4, above > 0 ? above : room)}px`;
}
