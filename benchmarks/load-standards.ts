/** Loads all standards and materials and prints how long that took [ms]. Run in a process of its own by standards.ts. */
const start = performance.now();
await Promise.all([
  import('@sparewright/core/standards/fits/questions'),
  import('@sparewright/core/standards/stock/questions'),
  import('@sparewright/core/standards/threads/questions'),
  import('@sparewright/core/standards/seals/questions'),
  import('@sparewright/core/standards/drives/questions'),
  import('@sparewright/core/standards/rings/questions'),
  import('@sparewright/core/standards/small-parts/questions'),
  import('@sparewright/core/standards/finish/questions'),
  import('@sparewright/core/materials/questions'),
]);
console.log(performance.now() - start);
