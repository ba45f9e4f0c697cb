/** Chromium's trace events -> what the page's main thread did, frame by frame. */

const isDrawing = (event) => event.name === 'FireAnimationFrame';

/** Whether an event belongs to the main thread that draws frames. */
const onDrawingThread = (events) => {
  const thread = events.find(isDrawing);
  if (thread === undefined) throw new Error('trace: no frame was drawn');
  return (event) => event.pid === thread.pid && event.tid === thread.tid;
};

/** How long collections of garbage held up that thread, milliseconds each. */
export const pausesOf = (events) =>
  events
    .filter(onDrawingThread(events))
    .filter((event) => event.ph === 'X' && /^(?:Minor|Major)GC$/.test(event.name))
    .map((event) => (event.tdur ?? event.dur ?? 0) / 1000);

/** The tasks of the main thread that draws frames, in order: begin, CPU time, and whether a frame was begun in it. */
export const tasksOf = (events) => {
  const onThread = onDrawingThread(events);
  const drawing = events.filter(isDrawing);
  const tasks = events
    .filter((event) => onThread(event) && event.ph === 'X' && event.name.endsWith('RunTask'))
    .sort((a, b) => a.ts - b.ts || b.dur - a.dur);
  // Tasks may be told twice, the outer one first: the inner is part of it
  let until = Number.NEGATIVE_INFINITY;
  const outer = tasks.filter((task) => {
    if (task.ts < until) return false;
    until = task.ts + (task.dur ?? 0);
    return true;
  });
  const begins = drawing.filter(onThread).map((event) => event.ts);
  return outer.map((task) => ({
    beginUs: task.ts,
    // CPU time where the browser gives it: what else the machine does does not count
    workMs: (task.tdur ?? task.dur ?? 0) / 1000,
    drawing: begins.some((ts) => ts >= task.ts && ts <= task.ts + (task.dur ?? 0)),
  }));
};

/** Work from the beginning of each frame to the beginning of the next; the unfinished last one is left out. */
export const workPerFrame = (tasks) => {
  const frames = [];
  let frame = null;
  for (const task of tasks) {
    if (task.drawing) {
      if (frame !== null) frames.push(frame);
      frame = { workMs: 0, longestMs: 0 };
    }
    if (frame === null) continue;
    frame.workMs += task.workMs;
    frame.longestMs = Math.max(frame.longestMs, task.workMs);
  }
  return frames;
};
