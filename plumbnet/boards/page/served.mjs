// The program on this machine, asked over a connection that no other page can use.

/** What is told where nothing answers. @returns {{refused: string}} */
export function unanswered() {
  return { refused: "The board does not answer. Is the program that opened it still running?" };
}

/** @param {string} path @param {RequestInit} [options] */
export async function askServer(path, options = {}) {
  const reply = await fetch(path, { ...options, headers: { "x-board": "1" }, cache: "no-store" });
  const body = await reply.json();
  if (!reply.ok && body.refused === undefined) throw new Error(`status ${reply.status}`);
  return body;
}

/** Calls back whenever the file was saved, with what is wrong with it or nothing. @param {(told: {mistake: string}) => void} tell */
export async function followSaves(tell) {
  for (let seen = 0; ; ) {
    try {
      const told = await askServer(`changed.json?seen=${seen}`);
      if (told.seen !== seen && seen > 0) tell(told);
      else if (told.mistake) tell(told);
      seen = told.seen;
    } catch {
      await new Promise((done) => setTimeout(done, 1000));
    }
  }
}
