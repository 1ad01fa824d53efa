import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { InputError } from '../errors.ts';
import { findMaterial } from './find.ts';
import { allMaterials, grades } from './material.ts';
import { gradeSpellings, plain } from './names.ts';

const exactNames = allMaterials().flatMap((m) =>
  gradeSpellings(m)
    .filter((s) => !s.near)
    .map((s) => ({ name: s.text, grade: m.grade })),
);
const gradesOf = (name: string) => new Set(exactNames.filter((n) => plain(n.name) === plain(name)).map((n) => n.grade));

describe('a name a person types', () => {
  test('finds the stainless bar under its number, fastener class, wartime number and standards', () => {
    for (const name of [
      '303',
      '1.4305',
      'A1',
      'EN58M',
      'EN 58 M',
      'SUS303',
      'S30300',
      'AISI 303',
      'EN 1.4305',
      'W.Nr. 1.4305',
    ]) {
      expect(findMaterial(name).grade, name).toBe('303');
    }
  });

  test('finds the trade names of bronze, brass, steel and plastic', () => {
    const trade = {
      EN1A: '11SMn30',
      gunmetal: 'LG2',
      'SAE 660': 'SAE660',
      'silver steel': '115CrV3',
      'screw brass': 'CuZn39Pb3',
      'naval brass': 'CuZn36Sn1Pb',
      'gauge plate': 'O1',
      EN8: '080M40',
      EN24: '34CrNiMo6',
      '12L14': '11SMnPb30',
      '316 stainless steel': '316',
      'titanium grade 5': 'Ti-Gr5',
    };
    for (const [name, grade] of Object.entries(trade)) expect(findMaterial(name).grade, name).toBe(grade);
  });

  test('means the same in BS 970 and EN 10088 as in the stockholder’s table of equivalents [AALCO-BS-EN]', ({
    task,
  }) => {
    const printed = [
      ['303S31', '1.4305'],
      ['304S31', '1.4301'],
      ['316S31', '1.4401'],
      ['316S11', '1.4404'],
      ['416S21', '1.4005'],
      ['431S29', '1.4057'],
    ] as const;
    for (const [bs, en] of printed) expect(findMaterial(bs).grade).toBe(findMaterial(en).grade);
    countOutside(task, printed.length);
  });

  test('means the same as the wartime EN number and its BS 970 number in the engineer’s list [ROYMECH]', ({ task }) => {
    expect(findMaterial('230M07').grade).toBe(findMaterial('EN1A').grade);
    expect(findMaterial('080M40').grade).toBe(findMaterial('EN8').grade);
    countOutside(task, 2);
  });

  test('resolves for every number and name that the reference prints without a doubt', () => {
    for (const row of referenceRows('materials', 'materials')) {
      const number = row.en_number?.split(/[\s(]/)[0] ?? '';
      const sure = /^\d\.\d{4}$/.test(number) && !row.en_number?.includes('near') ? [number] : [];
      for (const name of [row.id ?? '', ...sure]) {
        const found = findMaterial(name);
        if (name === row.id) expect(found.id).toBe(row.id);
        else expect(row.id?.startsWith(found.grade), `${name} gives ${found.id}, wanted ${row.id}`).toBe(true);
      }
    }
  });
});

describe('every spelling', () => {
  test('leads to its own alloy, or names every alloy it may mean', () => {
    for (const { name } of exactNames) {
      const meant = gradesOf(name);
      if (meant.size === 1) expect(meant).toContain(findMaterial(name).grade);
      else for (const grade of meant) expect(() => findMaterial(name), name).toThrow(grade);
    }
  });

  test('reads alike with any case, spaces, dots and hyphens', () => {
    const mark = fc.constantFrom('', ' ', '-', '.', '  ');
    const mangled = fc.constantFrom(...exactNames).chain(({ name }) =>
      fc.array(fc.tuple(mark, fc.boolean()), { minLength: name.length, maxLength: name.length }).map((marks) => ({
        name,
        typed: [...name]
          .map((c, i) => (marks[i]?.[1] ? c.toUpperCase() : c.toLowerCase()) + (marks[i]?.[0] ?? ''))
          .join(''),
      })),
    );
    const outcome = (name: string) => {
      try {
        return findMaterial(name).id;
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        return error.issues[0]?.expected;
      }
    };
    fc.assert(
      fc.property(mangled, ({ name, typed }) => {
        expect(outcome(typed)).toBe(outcome(name));
      }),
    );
  });

  test('of whatever letters gives a material or a refusal that names known ones', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), (name) => {
        try {
          expect(findMaterial(name).id).not.toBe('');
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }),
    );
  });
});

describe('an open name', () => {
  test('EN 58 lists its letters and what each is', () => {
    for (const part of ['EN58A', 'EN58E = 304', 'EN58J = 316', 'EN58M = 303', 'from memory']) {
      expect(() => findMaterial('EN 58')).toThrow(part);
    }
  });

  test('brass, mild steel, nylon and phosphor bronze list their candidates', () => {
    expect(() => findMaterial('brass')).toThrow(/CuZn39Pb3.*C36000.*CuZn36Sn1Pb/);
    expect(() => findMaterial('mild steel')).toThrow(/11SMn30.*C15.*S275/);
    expect(() => findMaterial('nylon')).toThrow(/PA66.*PA6-G/);
    expect(() => findMaterial('phosphor bronze')).toThrow(/CuSn8.*CuSn12.*C90700/);
  });

  test('an unknown name gives the nearest ones', () => {
    expect(() => findMaterial('17-4PHX')).toThrow('17-4PH');
    expect(() => findMaterial('')).toThrow('expected the name of a material');
  });

  test('a neighbour’s name is taken with a remark, an alloy not held is refused with the nearest', () => {
    expect(findMaterial('A36').remarks.join()).toContain('near neighbour');
    expect(findMaterial('A2').remarks.join()).toContain('tool steel');
    expect(() => findMaterial('EN24T')).toThrow('34CrNiMo6');
    expect(() => findMaterial('321')).toThrow('304');
  });
});

describe('size and condition', () => {
  test('the diameter chooses the strength', () => {
    expect(findMaterial('EN1A', { diameter: 12 }).id).toBe('11SMn30-C-10-16');
    expect(findMaterial('EN1A', { diameter: 16 }).id).toBe('11SMn30-C-10-16');
    expect(findMaterial('c45', { diameter: 30, condition: 'quenched' }).id).toBe('C45-QT-16-40');
  });

  test('without a diameter the weakest size is taken and said', () => {
    for (const { grade, states } of grades) {
      const found = findMaterial(grade);
      const same = allMaterials().filter((m) => m.grade === grade && m.condition === found.condition);
      const proof = (m: { proofStrength?: number }) => m.proofStrength ?? Number.POSITIVE_INFINITY;
      expect(proof(found)).toBe(Math.min(...same.map(proof)));
      if (same.length > 1) expect(found.remarks.join(), grade).toContain('no diameter given');
      expect(states.map((s) => s.id)).toContain(found.id);
    }
  });

  test('a diameter outside what is held is answered with a remark', () => {
    expect(findMaterial('EN1A', { diameter: 200 }).remarks.join()).toContain('not for 200 mm');
  });

  test('the condition may stand in the name; an unknown one lists those held', () => {
    expect(findMaterial('303 cold drawn').id).toBe('303-CD');
    expect(findMaterial('17-4PH', { condition: 'H900' }).id).toBe('17-4PH-H900');
    expect(() => findMaterial('303', { condition: 'H900' })).toThrow('solution annealed; cold drawn');
  });
});
