import "server-only";
import type { Database, VehicleVersion } from "@probeworthy/database";
import { type Fault, listFaultPlaces, type VehicleDocument } from "@probeworthy/vehicle";
import {
  type VehiclesView,
  type VehicleView,
  vehiclesViewSchema,
  vehicleViewSchema,
} from "@/features/vehicles/vehicles-view";
import { loadVehicle } from "../services/attempts/documents";
import { requireLatestVehicle } from "../services/scenarios/find-scenario";
import { paperIndexOf } from "./paper-index";
import { serviceViewOf } from "./service-view";

export async function loadVehicles(database: Database, organisationId: string): Promise<VehiclesView> {
  const vehicles = await database.vehicles.listForAuthors({ organisationId });
  return vehiclesViewSchema.parse({
    vehicles: await Promise.all(
      vehicles.map(async ({ id, name, latestNumber, isOwn, hasDraft }) => {
        const state = { id, name, own: isOwn, hasDraft };
        if (latestNumber === 0) return { ...state, version: null, systems: [], charts: 0 };
        const { document } = await requireLatestVehicle(database, organisationId, id);
        const charts = await database.charts.list({ organisationId, vehicleId: id });
        const systems = document.systems.map(({ title }) => title);
        return { ...state, version: latestNumber, systems, charts: charts.length };
      }),
    ),
  } satisfies VehiclesView);
}

/** The newest version of a vehicle with the service information of every system. */
export async function loadVehicleView(
  database: Database,
  organisationId: string,
  version: VehicleVersion,
): Promise<VehicleView> {
  const document = await loadVehicle(database, { organisationId, versionId: version.id });
  const vehicle = await database.vehicles.find({ organisationId, vehicleId: version.vehicleId });
  return vehicleViewSchema.parse({
    id: version.vehicleId,
    name: version.vehicleName,
    description: document.description,
    version: version.number,
    own: vehicle?.isOwn === true,
    counts: {
      components: document.components.length,
      connectors: document.connectors.length,
      conductors: document.conductors.length,
    },
    service: serviceViewOf(version.id, document),
    index: paperIndexOf(version.id, document),
    conditions: document.conditions,
    livePlaces: {
      open: placesFor(document, "open"),
      seriesResistance: placesFor(document, "seriesResistance"),
      shortToGround: placesFor(document, "shortToGround"),
      fuseBlown: placesFor(document, "fuseBlown"),
    },
  } satisfies VehicleView);
}

const placesFor = (document: VehicleDocument, kind: Fault["kind"]) =>
  listFaultPlaces(document, kind).map(({ place, title }) => ({ place, title }));
