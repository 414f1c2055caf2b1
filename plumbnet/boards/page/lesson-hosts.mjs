// Where the page of exercises has them from, and keeps the answers: the program on this machine, or what a copy holds.

import { askServer, followSaves } from "./served.mjs";

/**
 * What is asked; `left` has for each exercise the blanks that are not done with, `kept` where answers are kept.
 * @typedef {{key: string, dealt: any, digest: string, count: number, kept: string, left: number[][] | null}} Lesson
 */
/** @typedef {{digest: string, exercise: number, blank: number, given: string}} Given */

/** What a copy holds; answers are handed in at its end. */
export class HeldLesson {
  /** @param {any} data */
  constructor(data) {
    this.data = data;
  }

  /** @returns {Promise<Lesson>} */
  async lesson() {
    const { key, dealt, tasks } = this.data;
    return { key, dealt, digest: "", count: tasks.length, kept: "", left: null };
  }

  /** @param {number} at @returns {Promise<any>} */
  async task(at) {
    return this.data.tasks[at];
  }
}

/** The program on this machine, which keeps each answer as it is given. */
export class LiveLesson {
  /** @returns {Promise<any>} */
  lesson() {
    return askServer("lesson.json");
  }

  /** @param {number} at @returns {Promise<any>} */
  task(at) {
    return askServer(`task.json?at=${at}`);
  }

  /** Keeps an answer, though the page be closed at once. @param {Given} given @returns {Promise<any>} */
  keep(given) {
    return askServer("answered.json", { method: "POST", body: JSON.stringify(given), keepalive: true });
  }

  /** @param {(told: {mistake: string}) => void} tell */
  follow(tell) {
    return followSaves(tell);
  }
}

/** @returns {HeldLesson | LiveLesson} */
export function lessonHost() {
  const held = document.getElementById("data")?.textContent?.trim();
  return held ? new HeldLesson(JSON.parse(held)) : new LiveLesson();
}
