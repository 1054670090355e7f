import { describe, expect, it } from "vitest";
import { parseStartArguments, parseTestArguments, testSteps } from "./arguments.mjs";

describe("arguments of npm start", () => {
  it("without any serve this computer only, from the default folder", () => {
    expect(parseStartArguments([], "/somewhere")).toEqual({
      ok: true,
      value: { port: null, host: "127.0.0.1", data: "/somewhere/.data", demo: true },
    });
  });

  it("take port, folder and host, the folder relative to where the person is", () => {
    expect(
      parseStartArguments(
        ["--port", "8080", "--data=shop/data", "--host", "0.0.0.0", "--no-demo"],
        "/home/iris",
      ),
    ).toEqual({
      ok: true,
      value: { port: 8080, host: "0.0.0.0", data: "/home/iris/shop/data", demo: false },
    });
    expect(parseStartArguments(["--data", "/srv/data"], "/home/iris")).toMatchObject({
      value: { data: "/srv/data" },
    });
  });

  it.each(["0", "65536", "-1", "80.5", "http", "", "0x50", "1e3"])("refuse the port %j by name", (port) => {
    const parsed = parseStartArguments([`--port=${port}`], "/");
    expect(parsed).toEqual({ ok: false, error: `--port needs a number from 1 to 65535, not "${port}".` });
  });

  it.each([["--prot", "1"], ["now"], ["--port"], ["--host="], ["--data="]])(
    "refuse %j with words",
    (...argv) => {
      const parsed = parseStartArguments(argv, "/");
      expect(parsed).toMatchObject({ ok: false, error: expect.stringMatching(/\w+/) });
    },
  );

  it("ask for help", () => {
    expect(parseStartArguments(["-h"], "/")).toEqual({ ok: true, value: "help" });
  });
});

describe("arguments of npm test", () => {
  it("without any run every step in order", () => {
    expect(parseTestArguments([])).toEqual({ ok: true, value: [...testSteps] });
  });

  it("choose steps, which keep their order", () => {
    expect(parseTestArguments(["--only", "integration, unit"])).toEqual({
      ok: true,
      value: ["unit", "integration"],
    });
  });

  it("name an unknown step", () => {
    const parsed = parseTestArguments(["--only", "unit,smoke"]);
    expect(parsed).toEqual({
      ok: false,
      error: `There is no test step "smoke"; the steps are ${testSteps.join(", ")}.`,
    });
  });
});
