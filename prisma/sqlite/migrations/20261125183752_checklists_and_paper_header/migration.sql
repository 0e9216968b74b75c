-- CreateTable
CREATE TABLE "ChecklistRevision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL,
    "items" JSONB NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "ChecklistRevision_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Workshop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "pressureUnit" TEXT NOT NULL DEFAULT 'kPa',
    "temperatureUnit" TEXT NOT NULL DEFAULT 'C',
    "requiredPulls" INTEGER NOT NULL DEFAULT 3,
    "stepLimit" REAL NOT NULL DEFAULT 10,
    "riskLimit" REAL NOT NULL DEFAULT 0.02,
    "coverageRatio" REAL NOT NULL DEFAULT 0.9,
    "confidenceRatio" REAL NOT NULL DEFAULT 0.95,
    "overshootLimitPct" REAL NOT NULL DEFAULT 5,
    "signOffNeedsProof" BOOLEAN NOT NULL DEFAULT false,
    "leansOnEarlierCars" BOOLEAN NOT NULL DEFAULT true,
    "lastVisitNumber" INTEGER NOT NULL DEFAULT 0,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "logSettings" JSONB,
    "logSettingsRevision" INTEGER NOT NULL DEFAULT 1,
    "checklistRevision" INTEGER NOT NULL DEFAULT 1,
    "paperHeader" JSONB,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);
INSERT INTO "new_Workshop" ("confidenceRatio", "coverageRatio", "createdAt", "id", "isDemo", "lastVisitNumber", "leansOnEarlierCars", "logSettings", "logSettingsRevision", "name", "overshootLimitPct", "pressureUnit", "requiredPulls", "revision", "riskLimit", "signOffNeedsProof", "stepLimit", "temperatureUnit") SELECT "confidenceRatio", "coverageRatio", "createdAt", "id", "isDemo", "lastVisitNumber", "leansOnEarlierCars", "logSettings", "logSettingsRevision", "name", "overshootLimitPct", "pressureUnit", "requiredPulls", "revision", "riskLimit", "signOffNeedsProof", "stepLimit", "temperatureUnit" FROM "Workshop";
DROP TABLE "Workshop";
ALTER TABLE "new_Workshop" RENAME TO "Workshop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "ChecklistRevision_workshopId_revision_key" ON "ChecklistRevision"("workshopId", "revision");
