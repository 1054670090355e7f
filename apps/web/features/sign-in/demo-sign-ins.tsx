/** Shown only when the server says that it is a demonstration. */
export function DemoSignIns() {
  return (
    <aside aria-labelledby="demo-heading" className="max-w-sm self-start border border-edge p-5">
      <h2 id="demo-heading">This is a demonstration</h2>
      <p className="mt-1">
        The people, the vehicle and the results in it are invented. The sign-ins were printed in the window
        where the server was started.
      </p>
    </aside>
  );
}
