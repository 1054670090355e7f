-- CreateTable
CREATE TABLE "VehicleSheet" (
    "vehicleVersionId" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "layoutVersion" INTEGER NOT NULL,
    "drawing" JSONB NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "VehicleSheet_pkey" PRIMARY KEY ("vehicleVersionId","system","layoutVersion")
);

-- AddForeignKey
ALTER TABLE "VehicleSheet" ADD CONSTRAINT "VehicleSheet_vehicleVersionId_fkey" FOREIGN KEY ("vehicleVersionId") REFERENCES "VehicleVersion"("id") ON DELETE CASCADE ON UPDATE CASCADE;
