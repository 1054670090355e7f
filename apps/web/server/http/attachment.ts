import "server-only";

/** A text file to be saved. The name is given twice (RFC 6266): in plain ASCII, and as it is. */
export function attachment(text: string, name: string, type = "text/csv; charset=utf-8"): Response {
  const plain = name.normalize("NFKD").replace(/[^A-Za-z0-9 ._-]/g, "");
  const encoded = encodeURIComponent(name).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return new Response(text, {
    headers: {
      "Content-Type": type,
      "Content-Disposition": `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`,
    },
  });
}
