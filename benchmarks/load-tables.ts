/** Loads the tables and formulas of all standards and materials, without the questions' schemas, and prints how long that took [ms]. */
const start = performance.now();
await Promise.all([
  import('@sparewright/core/standards/fits/choose'),
  import('@sparewright/core/standards/fits/general-tolerances'),
  import('@sparewright/core/standards/stock/bars'),
  import('@sparewright/core/standards/stock/preferred-numbers'),
  import('@sparewright/core/standards/threads/find'),
  import('@sparewright/core/standards/threads/thread'),
  import('@sparewright/core/standards/threads/limits'),
  import('@sparewright/core/standards/threads/over-wires'),
  import('@sparewright/core/standards/threads/relief'),
  import('@sparewright/core/standards/threads/holes'),
  import('@sparewright/core/standards/seals/o-ring'),
  import('@sparewright/core/standards/seals/elastomer'),
  import('@sparewright/core/standards/drives/hexagon'),
  import('@sparewright/core/standards/rings/retaining-ring'),
  import('@sparewright/core/standards/finish/grit'),
  import('@sparewright/core/materials/find'),
  import('@sparewright/core/materials/cutting-data'),
]);
console.log(performance.now() - start);
