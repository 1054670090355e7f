import { describe, expect, it } from "vitest";
import { prepareVehicle } from "../compile/compile-vehicle";
import { benchVehicle } from "../testing/bench-vehicle";
import { must } from "../testing/drive";
import { checkChart } from "./check-chart";
import { parseChart } from "./parse-chart";
import { terminalChart } from "./terminal-chart";

const plain = `terminal,function,condition,expected low,expected high,unit
X2.1,Ignition feed,Ignition on,11.5,12.9,V
X2.4:h,Torque signal 1,"key=on; engineSpeed=800",2.3,2.7,V
X9:6,Bus,key=off,54,69,Ω
W28,Feed current,key=on,100,200,A
`;
const problems = (csv: string) => {
  const result = parseChart(csv, benchVehicle);
  return result.ok ? [] : result.error.map(({ line, column }) => [line, column]);
};

describe("parseChart", () => {
  it("reads the documented form", () => {
    const { rows } = must(parseChart(plain, benchVehicle));
    expect(rows.map(({ point, quantity, unit }) => [point, quantity, unit])).toEqual([
      ["X2.1:h", "volts", "V"],
      ["X2.4:h", "volts", "V"],
      ["X9:6", "ohms", "Ω"],
      ["W28", "amps", "A"],
    ]);
    expect(rows.map(({ line }) => line)).toEqual([2, 3, 4, 5]);
    expect(rows[0]?.conditions).toEqual({ key: "on" });
  });

  it.each([
    ["semicolons and decimal commas", "Unit;MAX;Min;Pin;Description;When\nV;12,9;11,5;X2.1;Feed;key=on\n"],
    [
      "a byte-order mark and CR LF",
      "\uFEFFterminal,function,condition,low,high,unit\r\nX2.1,Feed,key=on,11.5,12.9,V\r\n",
    ],
    [
      "tabs and a further column",
      "remark\tterminal\tsignal\tstate\tlow\thigh\tunits\n?\tX2.1\tFeed\tkey=ON\t11.5\t12.9\tvolts\n",
    ],
    [
      "quoted decimal commas, empty lines",
      'terminal,function,condition,low,high,unit\n\nX2.1,Feed,key=on,"11,5","12,9",V\n\n',
    ],
  ])("tolerates %s", (_, csv) => {
    const [row] = must(parseChart(csv, benchVehicle)).rows;
    expect(row).toMatchObject({
      point: "X2.1:h",
      low: 11.5,
      high: 12.9,
      unit: "V",
      conditions: { key: "on" },
    });
  });

  it("takes one limit alone, another reference and unplugged connectors", () => {
    const csv =
      "terminal,against,function,condition,low,high,unit\nX9:6,X9:14,Bus,key=off; unplugged=X2,,130,ohm\n";
    expect(must(parseChart(csv, benchVehicle)).rows[0]).toMatchObject({
      against: "X9:14",
      unplugged: ["X2"],
      high: 130,
    });
  });

  it("names line and column of every mistake at once", () => {
    const csv = `terminal,function,condition,expected low,expected high,unit
X2.99,Feed,key=on,1,2,V
X2.1,,key=run,one,2,V
X2.1,Feed,engineSpeed=9000,3,2,bar
X2.1,Feed,sunny,,,V
M7,Current,key=on,0,1,A
`;
    expect(problems(csv)).toEqual([
      [2, "terminal"],
      [3, "function"],
      [3, "condition"],
      [3, "expected low"],
      [4, "unit"],
      [4, "condition"],
      [4, "expected high"],
      [5, "condition"],
      [5, "expected low"],
      [6, "terminal"],
    ]);
  });

  it("says which columns are missing or doubled, and that a file is empty", () => {
    expect(problems("terminal,function,unit,low,min\nX2.1,Feed,V,1,1\n")).toEqual([
      [1, "min"],
      [1, "condition"],
      [1, "high"],
    ]);
    expect(problems("")).toEqual([[1, ""]]);
    expect(problems("terminal,function,condition,low,high,unit\n")).toEqual([[1, ""]]);
  });

  it("refuses quotes that do not pair, with the line", () => {
    const [first] = problems('terminal,function,condition,low,high,unit\nX2.1,"Feed,key=on,1,2,V\n');
    expect(first?.[1]).toBe("");
    expect(Number(first?.[0])).toBeGreaterThan(1);
  });
});

describe("checkChart", () => {
  const vehicle = must(prepareVehicle(benchVehicle));
  it("agrees row by row, or says what it read", () => {
    const csv = `${plain}X2.1,Feed,key=off,11,13,V\nX2.4,Signal,key=on,,2000,mV\n`;
    const rows = must(checkChart(vehicle, must(parseChart(csv, benchVehicle))));
    // The bus row is measured against battery negative, where only the modules' leakage joins it: an author's mistake.
    expect(rows.map(({ agrees }) => agrees)).toEqual([true, true, false, false, false, false]);
    expect(rows[4]?.message).toBe("X2.1:h reads 0 V, below 11 to 13 V");
    expect(rows[5]?.value).toBeCloseTo(2475, -2);
    expect(rows[5]?.expected).toBe("at most 2000 mV");
  });
  it("sees a fault where it shows", () => {
    const faulty = must(prepareVehicle(benchVehicle, [{ kind: "fuseBlown", component: "F1" }]));
    const rows = must(checkChart(faulty, must(parseChart(plain, benchVehicle))));
    expect(rows.slice(0, 2).map(({ agrees }) => agrees)).toEqual([false, false]);
  });
});

describe("terminalChart", () => {
  it("gives each row of a system its value", () => {
    const rows = must(terminalChart(must(prepareVehicle(benchVehicle)), "steering"));
    expect(rows.map(({ unit }) => unit)).toEqual(["V", "V", "Ω"]);
    expect(rows[0]?.value).toBeGreaterThan(12);
    expect(rows[1]?.value).toBeCloseTo(2.5, 1);
    expect(rows[2]?.value).toBeCloseTo(60, -1);
  });
  it("refuses an unknown system", () => {
    const result = terminalChart(must(prepareVehicle(benchVehicle)), "wipers");
    expect(result.ok ? undefined : result.error.code).toBe("unknown_id");
  });
});
