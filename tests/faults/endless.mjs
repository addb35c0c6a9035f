/** Computations that do not end, for the limits of the worker threads. */
const jobs = {
  loop: () => {
    for (;;);
  },
  eat: () => {
    const all = [];
    for (;;) all.push(new Array(100_000).fill(all.length));
  },
  fine: (input) => input * 2,
};

export const run = ({ name, input }) => jobs[name](input);
