import "server-only";
import { problem } from "./problem";

// PostgreSQL's text and JSON columns cannot hold the NUL character.
const nul = "\u0000";

/**
 * Reads a JSON body and stops as soon as it is longer than allowed, whatever its Content-Length claims.
 * @throws ProblemError `unsupported_media_type`, `too_large` or `malformed_request`
 */
export async function readJsonBody(request: Request, limitBytes: number): Promise<unknown> {
  const type = request.headers.get("content-type")?.split(";")[0]?.trim().toLowerCase();
  if (type !== "application/json") throw problem("unsupported_media_type");
  const text = new TextDecoder("utf-8", { fatal: true });
  const bytes = await readLimited(request, limitBytes);
  let body: unknown;
  let hasNul = false;
  try {
    body = JSON.parse(text.decode(bytes), (key, value: unknown) => {
      hasNul ||= key.includes(nul) || (typeof value === "string" && value.includes(nul));
      return value;
    });
  } catch {
    throw problem("malformed_request", { detail: "The body is not valid JSON in UTF-8." });
  }
  if (hasNul) throw problem("malformed_request", { detail: "Texts may not contain the character U+0000." });
  return body;
}

async function readLimited(request: Request, limitBytes: number): Promise<Uint8Array> {
  const tooLarge = () => problem("too_large", { detail: `At most ${limitBytes} bytes are taken here.` });
  if (Number(request.headers.get("content-length") ?? 0) > limitBytes) throw tooLarge();
  if (request.body === null) return new Uint8Array();
  const chunks: Uint8Array[] = [];
  let total = 0;
  const reader: ReadableStreamDefaultReader<Uint8Array> = request.body.getReader();
  for (let step = await reader.read(); !step.done; step = await reader.read()) {
    total += step.value.byteLength;
    if (total > limitBytes) {
      await reader.cancel();
      throw tooLarge();
    }
    chunks.push(step.value);
  }
  return new Uint8Array(Buffer.concat(chunks, total));
}
