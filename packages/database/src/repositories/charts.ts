import type { Client } from "../client";
import { toJson } from "../json";
import { fail, type Result, succeed } from "../result";

export interface ChartSummary {
  id: string;
  name: string;
  vehicleVersionId: string;
  createdAt: Date;
}

export interface Chart extends ChartSummary {
  csv: string;
  result: unknown;
}

export function createChartRepository(client: Client) {
  return {
    async create(input: {
      organisationId: string;
      vehicleVersionId: string;
      name: string;
      csv: string;
      result: unknown;
      createdById: string;
    }): Promise<Result<{ id: string }, { code: "not_found" }>> {
      const { organisationId, vehicleVersionId, name, csv, result, createdById } = input;
      const known = await client.vehicleVersion.count({
        where: { id: vehicleVersionId, vehicle: { organisationId } },
      });
      if (known === 0) return fail({ code: "not_found" });
      const { id } = await client.terminalChart.create({
        data: { organisationId, vehicleVersionId, name, csv, result: toJson(result), createdById },
      });
      return succeed({ id });
    },

    async list(input: { organisationId: string; vehicleId?: string }): Promise<ChartSummary[]> {
      const { organisationId, vehicleId } = input;
      return client.terminalChart.findMany({
        where: { organisationId, ...(vehicleId === undefined ? {} : { vehicleVersion: { vehicleId } }) },
        select: { id: true, name: true, vehicleVersionId: true, createdAt: true },
        orderBy: [{ createdAt: "desc" }, { id: "desc" }],
      });
    },

    async find(input: { organisationId: string; chartId: string }): Promise<Chart | null> {
      return client.terminalChart.findFirst({
        where: { id: input.chartId, organisationId: input.organisationId },
        select: { id: true, name: true, vehicleVersionId: true, createdAt: true, csv: true, result: true },
      });
    },
  };
}
