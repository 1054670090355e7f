/** Text made safe for XML content and attributes; characters XML does not allow at all are dropped. */
export function escapeXml(text: string): string {
  const allowed = [...text].filter((character) => {
    const code = character.codePointAt(0) ?? 0;
    return (
      code === 9 ||
      code === 10 ||
      code === 13 ||
      (code >= 32 && code <= 0xd7ff) ||
      (code >= 0xe000 && code <= 0xfffd) ||
      code >= 0x10000
    );
  });
  return allowed
    .join("")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}
