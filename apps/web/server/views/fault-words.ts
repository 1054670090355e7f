import "server-only";
import type { Fault } from "@probeworthy/vehicle";

const figure = (value: number): string => String(Number(value.toPrecision(3)));

/** A concrete fault in one line, severity included. */
export function describeFault(fault: Fault): string {
  switch (fault.kind) {
    case "open":
      return `Open at ${fault.at}`;
    case "seriesResistance":
      return `${figure(fault.ohms)} Ω too much at ${fault.at}`;
    case "shortToGround":
      return `Short to ground at ${fault.at}, ${figure(fault.ohms)} Ω`;
    case "shortToSupply":
      return `Short from ${fault.at} to the supply at ${fault.supply}, ${figure(fault.ohms)} Ω`;
    case "shortBetween":
      return `Short between ${fault.at} and ${fault.other}, ${figure(fault.ohms)} Ω`;
    case "fuseBlown":
      return `Fuse ${fault.component} open`;
    case "sensorOffset":
      return `Output ${fault.channel} of ${fault.component} off by ${figure(fault.volts)} V`;
    case "sensorStuck":
      return `Output ${fault.channel} of ${fault.component} stuck at ${figure(fault.volts)} V`;
    case "internalOpen":
      return `${fault.component} open inside, at terminal ${fault.terminal}`;
    case "motorHot":
      return `Winding of ${fault.component} at ${figure(fault.celsius)} °C`;
    case "weakBattery":
      return `${fault.component} at ${figure(fault.stateOfCharge * 100)} % charge, ${figure(fault.internalOhmsFactor)} times its usual internal resistance`;
  }
}
