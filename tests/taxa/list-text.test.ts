import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { listText, separatorOf } from '../../src/taxa/list-text.ts';

const little = (text: string) => Uint8Array.from(Buffer.from(text, 'utf16le'));
const big = (text: string) => Uint8Array.from(Buffer.from(text, 'utf16le').swap16());
const utf8 = (text: string) => Uint8Array.from(Buffer.from(text, 'utf8'));
const joined = (...parts: Uint8Array[]) => Uint8Array.from(Buffer.concat(parts));

/**
 * The bytes 0x80 to 0x9f of Windows-1252 (Unicode Consortium, Mappings/VENDORS/MICSFT/WINDOWS/CP1252.TXT,
 * from memory); null where it leaves one open. All above stand at their own place, as in ISO 8859-1.
 */
const HIGH = [...'€_‚ƒ„…†‡ˆ‰Š‹Œ_Ž__‘’“”•–—˜™š›œ_žŸ'].map((letter) =>
  letter === '_' ? null : letter,
);

function windows1252(text: string): Uint8Array {
  return Uint8Array.from([...text], (letter) => {
    const at = HIGH.indexOf(letter);
    return at === -1 ? letter.charCodeAt(0) : 0x80 + at;
  });
}

const TABLE = 'scientificName,vernacularName\nPica pica,Pie bavarde é\n';

describe('the text of a table', () => {
  // Byte order marks: Unicode Standard, chapter 23.8.
  test.each<[string, Uint8Array, string]>([
    ['UTF-8', utf8(TABLE), 'UTF-8'],
    ['UTF-8 with a byte order mark', joined(Uint8Array.of(0xef, 0xbb, 0xbf), utf8(TABLE)), 'UTF-8'],
    ['UTF-16LE with a byte order mark', joined(Uint8Array.of(0xff, 0xfe), little(TABLE)), 'UTF-16'],
    ['UTF-16BE with a byte order mark', joined(Uint8Array.of(0xfe, 0xff), big(TABLE)), 'UTF-16'],
    ['UTF-16LE', little(TABLE), 'UTF-16'],
    ['UTF-16BE', big(TABLE), 'UTF-16'],
    ['Windows-1252', windows1252(TABLE), 'Windows-1252'],
  ])('is read from %s', (_, bytes, encoding) => {
    expect(listText(bytes)).toEqual({ text: TABLE, encoding });
  });

  test('of no bytes, or of one, is no fault', () => {
    expect(listText(new Uint8Array())).toEqual({ text: '', encoding: 'UTF-8' });
    expect(listText(Uint8Array.of(0xe9)).text).toBe('é');
    for (const byte of [0xff, 0xfe, 0]) expect(() => listText(Uint8Array.of(byte))).not.toThrow();
  });

  test('of Windows-1252 has its quotes and dashes, which ISO 8859-1 lacks', () => {
    const written = HIGH.filter((letter) => letter !== null).join('');
    expect(written).toHaveLength(27);
    expect(listText(windows1252(`${written}é`)).text).toBe(`${written}é`);
  });

  const sound = fc
    .string({ unit: 'binary', maxLength: 200 })
    .filter((text) => !/[\0\ufeff]/.test(text) && text.isWellFormed());

  test('comes through UTF-8 and marked UTF-16 whatever it holds', () => {
    fc.assert(
      fc.property(sound, (text) => {
        expect(listText(utf8(text))).toEqual({ text, encoding: 'UTF-8' });
        expect(listText(utf8(`\ufeff${text}`)).text).toBe(text);
        expect(listText(little(`\ufeff${text}`))).toEqual({ text, encoding: 'UTF-16' });
        expect(listText(big(`\ufeff${text}`))).toEqual({ text, encoding: 'UTF-16' });
      }),
    );
  });

  test('comes through UTF-16 without a mark where its header is in Latin letters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (name) => {
        fc.pre(!/[\0\ufeff]/.test(name) && name.isWellFormed());
        const text = `scientificName,vernacularName\nPica pica,${name}`;
        expect(listText(little(text))).toEqual({ text, encoding: 'UTF-16' });
        expect(listText(big(text))).toEqual({ text, encoding: 'UTF-16' });
      }),
    );
  });

  test('comes through Windows-1252 where it has a letter that UTF-8 does not begin a sequence with', () => {
    const letters = fc.constantFrom(...'abc ,\n', ...'äéñøßÀÿ', '’', '–', '€', 'œ');
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 60 }), (all) => {
        const text = `é,${all.join('')}`;
        expect(listText(windows1252(text))).toEqual({ text, encoding: 'Windows-1252' });
      }),
    );
  });

  test('of any bytes at all is some text', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(typeof listText(bytes).text).toBe('string');
      }),
    );
  });
});

describe('what separates the cells', () => {
  test.each([
    ['a,b\n1;2;3', ','],
    ['a;b;c\n1,2', ';'],
    ['a\tb\n1,2', '\t'],
    ['"a, b, c";d;e', ';'],
    ['\r\n\r\na;b', ';'],
    ['\ufeffa\tb', '\t'],
    ['"a\nb, c";d', ';'],
    ['scientificName', ','],
    ['', ','],
    ['a,b;c', ','],
  ])('of %j is %j', (text, separator) => {
    expect(separatorOf(text)).toBe(separator);
  });
});
