import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';

/** Values that have broken readers of numbers, names and addresses before. */
const HARD = [
  '',
  '0',
  '-1',
  '1e309',
  'NaN',
  'None',
  'Overwrite',
  '65536',
  '99999999999999999999',
  '1,2,3,4,5',
  ',',
  '255/1',
  '256/1',
  '1.512',
  '0.0',
  '{1,0,0}{}',
  '{1e300,0,0,0}{0,1e300,0,0}{0,0,1,0}{0,0,0,1}',
  'Body',
  'Cell',
  '__proto__',
  'constructor',
  '&amp;',
  '&#0;',
  '&#x110000;',
  '&#xD800;',
  '&#99999999999999999999;',
  '&toString;',
  '<!--',
  ']]>',
  '\u202e',
  '\ud800',
  'x'.repeat(5000),
];

type Change = (text: string) => string;

const place = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });
const matchAt = (text: string, pattern: RegExp, at: number): RegExpMatchArray | undefined => {
  const all = [...text.matchAll(pattern)];
  return all[Math.floor(at * all.length)];
};
const cut = (text: string, m: RegExpMatchArray | undefined, by: string): string =>
  m?.index === undefined ? text : text.slice(0, m.index) + by + text.slice(m.index + m[0].length);

const ATTRIBUTE = /="[^"]*"/g;
const ELEMENT = /<(\w+)[^<>]*\/>|<(\w+)[^<>]*>[^<]*<\/\2>/g;
const TAG = /<[^<>]*>/g;

const changes: fc.Arbitrary<Change> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.tuple(place, fc.constantFrom(...HARD)).map(
      ([p, v]): Change =>
        (t) =>
          cut(t, matchAt(t, ATTRIBUTE, p), `="${v}"`),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(place, place).map(
      ([p, q]): Change =>
        (t) =>
          cut(t, matchAt(t, ATTRIBUTE, p), matchAt(t, ATTRIBUTE, q)?.[0] ?? '=""'),
    ),
  },
  {
    weight: 2,
    arbitrary: place.map(
      (p): Change =>
        (t) =>
          cut(t, matchAt(t, ELEMENT, p), ''),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(place, place).map(
      ([p, q]): Change =>
        (t) => {
          const m = matchAt(t, ELEMENT, p);
          return cut(t, matchAt(t, ELEMENT, q), m ? m[0].repeat(3) : '');
        },
    ),
  },
  {
    weight: 1,
    arbitrary: place.map(
      (p): Change =>
        (t) =>
          cut(t, matchAt(t, TAG, p), ''),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(place, fc.string()).map(
      ([p, s]): Change =>
        (t) => {
          const at = Math.floor(p * t.length);
          return t.slice(0, at) + s + t.slice(at);
        },
    ),
  },
  {
    weight: 1,
    arbitrary: place.map(
      (p): Change =>
        (t) =>
          t.slice(0, Math.floor(p * t.length)),
    ),
  },
);

/** A description with one to six things changed in it, packed again so that the change is really read. */
export const mutatedText = (texts: readonly string[]): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(fc.constantFrom(...texts), fc.array(changes, { minLength: 1, maxLength: 6 }))
    .map(([text, list]) =>
      zipSync({ 'description.xml': strToU8(list.reduce((t, change) => change(t), text)) }, { level: 1 }),
    );

/** A file with bytes overwritten, cut out or doubled. */
export const mutatedBytes = (files: readonly Uint8Array[]): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(
      fc.constantFrom(...files),
      fc.array(
        fc.tuple(place, fc.constantFrom('set', 'cut', 'double', 'end'), fc.integer({ min: 0, max: 255 })),
        {
          minLength: 1,
          maxLength: 5,
        },
      ),
    )
    .map(([file, list]) =>
      list.reduce((bytes, [p, how, n]) => {
        const at = Math.floor(p * bytes.length);
        const to = Math.min(bytes.length, at + n);
        if (how === 'end') return bytes.slice(0, at);
        if (how === 'set') {
          const copy = bytes.slice();
          if (at < copy.length) copy[at] = n;
          return copy;
        }
        const middle = how === 'double' ? [...bytes.subarray(at, to), ...bytes.subarray(at, to)] : [];
        return Uint8Array.from([...bytes.subarray(0, at), ...middle, ...bytes.subarray(to)]);
      }, file),
    );
