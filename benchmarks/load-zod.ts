/** Loads the schema library alone and prints how long that took [ms]: what every question needs before any standard. */
const start = performance.now();
await import('zod');
console.log(performance.now() - start);
