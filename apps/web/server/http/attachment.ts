import "server-only";

/** A file to be saved, text unless its type says otherwise. The name is given twice (RFC 6266): in plain ASCII, and as it is. */
export function attachment(
  content: string | Uint8Array<ArrayBuffer>,
  name: string,
  type = "text/csv; charset=utf-8",
): Response {
  const plain = name.normalize("NFKD").replace(/[^A-Za-z0-9 ._-]/g, "");
  const encoded = encodeURIComponent(name).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return new Response(content, {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`,
    },
  });
}
