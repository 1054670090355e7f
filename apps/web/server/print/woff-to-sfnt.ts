import { inflateSync } from "node:zlib";

/**
 * Unpacks a WOFF file (W3C WOFF 1.0) to the TrueType or OpenType font inside it. The PDF writer reads WOFF by itself, but
 * stumbles over an empty glyph at the end of a table it has unpacked alone.
 */
export function woffToSfnt(woff: Uint8Array): Uint8Array {
  const view = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  if (view.getUint32(0) !== 0x774f4646) throw new Error("not a WOFF file");
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = 44 + index * 20;
    const [offset, packed, length] = [
      view.getUint32(at + 4),
      view.getUint32(at + 8),
      view.getUint32(at + 12),
    ];
    const content = woff.subarray(offset, offset + packed);
    return {
      tag: view.getUint32(at),
      checksum: view.getUint32(at + 16),
      bytes: packed < length ? new Uint8Array(inflateSync(content)) : content,
    };
  });
  const directory = 12 + count * 16;
  const padded = (length: number) => Math.ceil(length / 4) * 4;
  const sfnt = new Uint8Array(directory + tables.reduce((sum, { bytes }) => sum + padded(bytes.length), 0));
  const out = new DataView(sfnt.buffer);
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, count);
  const power = Math.floor(Math.log2(count));
  out.setUint16(6, 2 ** power * 16);
  out.setUint16(8, power);
  out.setUint16(10, count * 16 - 2 ** power * 16);
  let at = directory;
  tables.forEach(({ tag, checksum, bytes }, index) => {
    const row = 12 + index * 16;
    out.setUint32(row, tag);
    out.setUint32(row + 4, checksum);
    out.setUint32(row + 8, at);
    out.setUint32(row + 12, bytes.length);
    sfnt.set(bytes, at);
    at += padded(bytes.length);
  });
  return sfnt;
}
