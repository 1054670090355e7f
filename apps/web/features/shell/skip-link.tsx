/** The first stop of the Tab key: past the header, straight to what the page is about. */
export function SkipLink() {
  return (
    <a
      href="#content"
      className="sr-only z-50 border-2 border-ink bg-paper px-4 py-3 font-semibold focus:not-sr-only focus:fixed focus:top-3 focus:left-3"
    >
      Skip to content
    </a>
  );
}
