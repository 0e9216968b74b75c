-- CreateTable
CREATE TABLE "DriftAlarm" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "presetId" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "driftPct" REAL NOT NULL,
    "pullId" TEXT NOT NULL,
    "pullNumber" INTEGER NOT NULL,
    "visitId" TEXT NOT NULL,
    "visitNumber" INTEGER NOT NULL,
    "mayBeConditions" BOOLEAN NOT NULL,
    "text" TEXT NOT NULL,
    "raisedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "clearedAt" DATETIME,
    CONSTRAINT "DriftAlarm_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "DriftAlarm_presetId_fkey" FOREIGN KEY ("presetId") REFERENCES "Preset" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "DriftAlarm_presetId_clearedAt_idx" ON "DriftAlarm"("presetId", "clearedAt");

-- CreateIndex
CREATE INDEX "DriftAlarm_workshopId_idx" ON "DriftAlarm"("workshopId");
