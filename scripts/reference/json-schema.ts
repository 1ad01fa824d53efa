/** The JSON Schema of one of the core's schemas, as it is put in or as it comes out. */
import { z } from 'zod';

export function jsonSchema(schema: z.ZodType, io: 'input' | 'output') {
  return z.toJSONSchema(schema, { io, unrepresentable: 'any' });
}
