import type { VehicleDocument } from "@probeworthy/vehicle";

type Section = VehicleDocument["systems"][number]["howItWorks"][number];

/** Written for somebody who has never opened a power steering circuit before. */
export const howItWorks: Section[] = [
  {
    title: "What the system does",
    paragraphs: [
      "A shaft still joins the steering wheel to the rack. An electric motor on the column pushes that shaft in the direction the driver is already turning. When the motor gives nothing, the car still steers: it is only heavy.",
      "The module A1 on the column does three things all the time. It measures how hard the driver turns, it works out how much motor current that deserves, and it watches itself for faults.",
    ],
  },
  {
    title: "Two feeds and two grounds",
    paragraphs: [
      "The ignition feed (terminal 15) comes through the 10 A fuse F11 and the in-line connector X31. It is live in ON and in START and only wakes the module. A few hundred milliamps flow in it.",
      "The battery feed (terminal 30) comes through the 60 A fuse F2 straight from the battery and is live always. It carries nothing but motor current. A voltage there proves little until current flows.",
      "The power ground 31P returns the motor current to the body at XE3 through a thick wire. The signal ground 31S is a thin wire through X31 to the dash ground XE4, and every voltage the module measures is measured against it. The two grounds are not joined inside the module.",
      "With no ignition feed or no signal ground the module is asleep: no assist, no codes from it, no answer to a scan tool. With no battery feed or no power ground it is awake, knows that something is wrong, and says so.",
    ],
  },
  {
    title: "The torque sensor",
    paragraphs: [
      "The driver's hand twists a torsion bar in the column by a few degrees. The sensor B1 turns that twist into two voltages. Without effort both rest at half of the 5 V sensor supply. Effort to the right raises signal 1 and lowers signal 2 by the same amount; effort to the left does the opposite.",
      "So the two always add up to the supply, and half of their difference is the twist. The module trusts the pair only while each signal lies between 0.5 V and 4.5 V and their sum matches the supply.",
      "Both outputs are dividers across the sensor supply. Lose the sensor ground and both outputs climb towards 5 V; lose the supply and both fall to 0 V; lose one signal wire and only that input falls, because the module pulls it down.",
    ],
  },
  {
    title: "From torque to current",
    paragraphs: [
      "A curve gives the motor current that belongs to a torque. Road speed then takes some of it away: full help when parking, about a third on a motorway, so that the car does not feel nervous. Road speed comes from the brake module over the CAN.",
      "Assist needs a running engine, which the module learns from the engine module over the CAN. If that message is missing, it looks at its battery feed: above 13 V something is charging the battery, so the engine must be running. If the road speed is missing, it assumes 90 km/h.",
      "The bridge inside the module steers the current into the motor through M+ and M−, either way round, and measures what really flows. The scan tool shows both: the target from the curve, and the actual current.",
    ],
  },
  {
    title: "Heat",
    paragraphs: [
      "No sensor sits in the motor. The module computes the winding temperature from the current it has delivered and from time. Above 115 °C it allows less and less of the target current, and gives it back as the motor cools. It stores no code for this and lights no lamp.",
    ],
  },
  {
    title: "The data bus",
    paragraphs: [
      "The modules share one twisted pair. The engine module closes one end with 120 Ω inside, the resistor R1 behind the instrument cluster closes the other, so a meter between the two wires of the sleeping bus reads about 60 Ω. With the key on both wires average near 2.5 V, CAN high a little above, CAN low a little below.",
      "The instrument cluster lights the steering lamp E1 when the steering asks for it, and also when it no longer hears the steering at all.",
    ],
  },
];
