// The board in a notebook: a frame with the page in it, whose questions go to the kernel, and the kernel's answers back.

let views = 0;

/**
 * Puts a frame into the cell. A notebook shows a widget as often as it is asked for, each view with a frame of its own.
 * @param {{model: any, el: HTMLElement}} shown
 * @returns {() => void} what takes it away again
 */
function render({ model, el }) {
  const view = ++views, frame = document.createElement("iframe");
  frame.title = "The board";
  frame.setAttribute("sandbox", "allow-scripts");
  frame.style.cssText = `display:block;width:100%;height:${model.get("height")}px;border:0`;
  const asked = (/** @type {MessageEvent} */ event) => {
    if (event.source === frame.contentWindow && event.data?.board) model.send({ ...event.data.board, view });
  };
  const answered = (/** @type {any} */ told) => {
    if (told.view === view) frame.contentWindow?.postMessage({ board: told }, "*");
  };
  addEventListener("message", asked);
  model.on("msg:custom", answered);
  frame.srcdoc = model.get("page");
  el.append(frame);
  return () => {
    removeEventListener("message", asked);
    model.off("msg:custom", answered);
  };
}

export default { render };
