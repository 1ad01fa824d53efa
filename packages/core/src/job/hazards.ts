/** Where failing would hurt somebody. Apart from the schema, so that a page can offer them without loading it. */
export const hazards = [
  'ordinary',
  'pressure',
  'lifting',
  'vehicle safety',
  'food contact',
  'electrical',
  'rotating at speed',
] as const;
