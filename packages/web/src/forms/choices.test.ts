import { cutterKinds, drillKinds } from '@sparewright/core/cutting/cutter';
import { edgeConditions } from '@sparewright/core/cutting/edge';
import { conditions, gaugeKinds } from '@sparewright/core/evidence/schema';
import { hazards } from '@sparewright/core/job/schema';
import { bearingKinds } from '@sparewright/core/lathe/prior-beliefs';
import { roles } from '@sparewright/core/part/schema';
import { expect, test } from 'vitest';
import * as page from './choices.ts';

test('what can be chosen on the page is what a document may say', () => {
  expect({ ...page }).toEqual({
    hazards: [...hazards],
    roles: [...roles],
    conditions: [...conditions],
    gaugeKinds: [...gaugeKinds],
    bearingKinds: [...bearingKinds],
    cutterKinds: [...cutterKinds],
    drillKinds: [...drillKinds],
    edgeConditions: [...edgeConditions],
  });
});
