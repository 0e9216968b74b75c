-- CreateTable
CREATE TABLE "Workshop" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "pressureUnit" TEXT NOT NULL DEFAULT 'kPa',
    "temperatureUnit" TEXT NOT NULL DEFAULT 'C',
    "requiredPulls" INTEGER NOT NULL DEFAULT 3,
    "stepLimit" DOUBLE PRECISION NOT NULL DEFAULT 10,
    "riskLimit" DOUBLE PRECISION NOT NULL DEFAULT 0.02,
    "lastVisitNumber" INTEGER NOT NULL DEFAULT 0,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Workshop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Member" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "pressureUnit" TEXT NOT NULL DEFAULT 'kPa',
    "temperatureUnit" TEXT NOT NULL DEFAULT 'C',
    "active" BOOLEAN NOT NULL DEFAULT true,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Member_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignIn" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "memberId" TEXT NOT NULL,
    "secretHash" TEXT NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SignIn_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ApiToken" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "memberId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "secretHash" TEXT NOT NULL,
    "lastUsedAt" TIMESTAMP(3),
    "revokedAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ApiToken_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Customer" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "searchText" TEXT NOT NULL,
    "phone" TEXT,
    "email" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Customer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Car" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "customerId" TEXT NOT NULL,
    "plate" TEXT NOT NULL,
    "plateKey" TEXT NOT NULL,
    "searchText" TEXT NOT NULL,
    "model" TEXT NOT NULL,
    "modelYear" INTEGER,
    "vin" TEXT,
    "buildCode" TEXT,
    "controllerId" TEXT,
    "mechanics" JSONB NOT NULL,
    "limits" JSONB NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Car_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Controller" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "presetSlots" INTEGER NOT NULL,
    "hasTimedOverride" BOOLEAN NOT NULL,
    "loop" TEXT NOT NULL,
    "dutyPct" JSONB NOT NULL,
    "holdPct" JSONB,
    "correction" JSONB,
    "note" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Controller_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Preset" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "carId" TEXT NOT NULL,
    "slot" INTEGER NOT NULL,
    "replacedAt" TIMESTAMP(3),
    "signedOffRevision" INTEGER,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Preset_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PresetRevision" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "presetId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "slot" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "holdSeconds" DOUBLE PRECISION,
    "targetKpa" DOUBLE PRECISION,
    "toleranceKpa" DOUBLE PRECISION NOT NULL,
    "ceilingKpa" DOUBLE PRECISION,
    "dutyPct" DOUBLE PRECISION,
    "gateHoldPct" DOUBLE PRECISION,
    "correctionStrength" DOUBLE PRECISION,
    "reason" TEXT NOT NULL DEFAULT '',
    "madeBy" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "PresetRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Visit" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "number" INTEGER NOT NULL,
    "carId" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "wishes" TEXT NOT NULL DEFAULT '',
    "bay" TEXT,
    "tunerId" TEXT,
    "bookedFor" TIMESTAMP(3),
    "promisedAt" TIMESTAMP(3),
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Visit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StageEntry" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "visitId" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by" TEXT NOT NULL,
    "enteredAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "StageEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TuningSession" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "visitId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "placeKind" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "driver" TEXT NOT NULL,
    "passenger" TEXT NOT NULL,
    "fuel" TEXT NOT NULL DEFAULT '',
    "air" JSONB NOT NULL,
    "readiness" JSONB,
    "readinessPassed" BOOLEAN NOT NULL DEFAULT false,
    "readinessBy" TEXT,
    "readinessAt" TIMESTAMP(3),
    "startedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revision" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "TuningSession_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Pull" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "visitId" TEXT NOT NULL,
    "tuningSessionId" TEXT NOT NULL,
    "presetId" TEXT NOT NULL,
    "presetRevision" INTEGER NOT NULL,
    "number" INTEGER NOT NULL,
    "dutyPct" DOUBLE PRECISION NOT NULL,
    "holdPct" DOUBLE PRECISION,
    "gear" INTEGER,
    "peakKpa" DOUBLE PRECISION NOT NULL,
    "rawPeakKpa" DOUBLE PRECISION,
    "settledKpa" DOUBLE PRECISION,
    "overshootPct" DOUBLE PRECISION,
    "riseTimeS" DOUBLE PRECISION,
    "onsetRpm" DOUBLE PRECISION,
    "intakeC" DOUBLE PRECISION,
    "heatSoaked" BOOLEAN NOT NULL DEFAULT false,
    "source" TEXT NOT NULL,
    "logId" TEXT,
    "logPullIndex" INTEGER,
    "usable" BOOLEAN NOT NULL DEFAULT true,
    "reasons" JSONB NOT NULL,
    "warnings" JSONB NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "voidedAt" TIMESTAMP(3),
    "voidReason" TEXT,
    "voidedBy" TEXT,
    "recordedBy" TEXT NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Pull_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Log" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "tuningSessionId" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "byteCount" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "analysis" JSONB NOT NULL,
    "traces" JSONB NOT NULL,
    "analysisVersion" TEXT NOT NULL,
    "recordedBy" TEXT NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Log_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignOff" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "visitId" TEXT NOT NULL,
    "sealedText" TEXT NOT NULL,
    "sealSha256" TEXT NOT NULL,
    "signedName" TEXT NOT NULL,
    "signedBy" TEXT NOT NULL,
    "signedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SignOff_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReportLink" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "visitId" TEXT NOT NULL,
    "secretHash" TEXT NOT NULL,
    "openedCount" INTEGER NOT NULL DEFAULT 0,
    "revokedAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ReportLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuditEvent" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "action" TEXT NOT NULL,
    "noun" TEXT NOT NULL,
    "recordId" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "detail" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AuditEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "KeptReply" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "memberId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "requestHash" TEXT NOT NULL,
    "status" INTEGER,
    "body" TEXT,
    "madeRecordId" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "KeptReply_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Member_email_key" ON "Member"("email");

-- CreateIndex
CREATE INDEX "Member_workshopId_idx" ON "Member"("workshopId");

-- CreateIndex
CREATE UNIQUE INDEX "SignIn_secretHash_key" ON "SignIn"("secretHash");

-- CreateIndex
CREATE INDEX "SignIn_memberId_idx" ON "SignIn"("memberId");

-- CreateIndex
CREATE INDEX "SignIn_expiresAt_idx" ON "SignIn"("expiresAt");

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_secretHash_key" ON "ApiToken"("secretHash");

-- CreateIndex
CREATE INDEX "ApiToken_workshopId_idx" ON "ApiToken"("workshopId");

-- CreateIndex
CREATE INDEX "Customer_workshopId_name_idx" ON "Customer"("workshopId", "name");

-- CreateIndex
CREATE INDEX "Car_workshopId_plateKey_idx" ON "Car"("workshopId", "plateKey");

-- CreateIndex
CREATE INDEX "Car_workshopId_vin_idx" ON "Car"("workshopId", "vin");

-- CreateIndex
CREATE INDEX "Car_customerId_idx" ON "Car"("customerId");

-- CreateIndex
CREATE INDEX "Car_workshopId_buildCode_idx" ON "Car"("workshopId", "buildCode");

-- CreateIndex
CREATE INDEX "Controller_workshopId_name_idx" ON "Controller"("workshopId", "name");

-- CreateIndex
CREATE INDEX "Preset_workshopId_idx" ON "Preset"("workshopId");

-- CreateIndex
CREATE INDEX "Preset_carId_slot_idx" ON "Preset"("carId", "slot");

-- CreateIndex
CREATE UNIQUE INDEX "PresetRevision_presetId_revision_key" ON "PresetRevision"("presetId", "revision");

-- CreateIndex
CREATE INDEX "Visit_workshopId_stage_idx" ON "Visit"("workshopId", "stage");

-- CreateIndex
CREATE INDEX "Visit_carId_idx" ON "Visit"("carId");

-- CreateIndex
CREATE UNIQUE INDEX "Visit_workshopId_number_key" ON "Visit"("workshopId", "number");

-- CreateIndex
CREATE INDEX "StageEntry_visitId_idx" ON "StageEntry"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "TuningSession_visitId_number_key" ON "TuningSession"("visitId", "number");

-- CreateIndex
CREATE INDEX "Pull_tuningSessionId_idx" ON "Pull"("tuningSessionId");

-- CreateIndex
CREATE INDEX "Pull_presetId_idx" ON "Pull"("presetId");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_visitId_presetId_number_key" ON "Pull"("visitId", "presetId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_logId_logPullIndex_key" ON "Pull"("logId", "logPullIndex");

-- CreateIndex
CREATE INDEX "Log_workshopId_sha256_idx" ON "Log"("workshopId", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "Log_tuningSessionId_sha256_key" ON "Log"("tuningSessionId", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "SignOff_visitId_key" ON "SignOff"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "ReportLink_secretHash_key" ON "ReportLink"("secretHash");

-- CreateIndex
CREATE INDEX "ReportLink_visitId_idx" ON "ReportLink"("visitId");

-- CreateIndex
CREATE INDEX "AuditEvent_workshopId_at_idx" ON "AuditEvent"("workshopId", "at");

-- CreateIndex
CREATE INDEX "AuditEvent_recordId_idx" ON "AuditEvent"("recordId");

-- CreateIndex
CREATE INDEX "KeptReply_createdAt_idx" ON "KeptReply"("createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "KeptReply_workshopId_memberId_key_key" ON "KeptReply"("workshopId", "memberId", "key");

-- AddForeignKey
ALTER TABLE "Member" ADD CONSTRAINT "Member_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignIn" ADD CONSTRAINT "SignIn_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignIn" ADD CONSTRAINT "SignIn_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Customer" ADD CONSTRAINT "Customer_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Car" ADD CONSTRAINT "Car_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Car" ADD CONSTRAINT "Car_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Car" ADD CONSTRAINT "Car_controllerId_fkey" FOREIGN KEY ("controllerId") REFERENCES "Controller"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Controller" ADD CONSTRAINT "Controller_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Preset" ADD CONSTRAINT "Preset_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Preset" ADD CONSTRAINT "Preset_carId_fkey" FOREIGN KEY ("carId") REFERENCES "Car"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PresetRevision" ADD CONSTRAINT "PresetRevision_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PresetRevision" ADD CONSTRAINT "PresetRevision_presetId_fkey" FOREIGN KEY ("presetId") REFERENCES "Preset"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_carId_fkey" FOREIGN KEY ("carId") REFERENCES "Car"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_tunerId_fkey" FOREIGN KEY ("tunerId") REFERENCES "Member"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StageEntry" ADD CONSTRAINT "StageEntry_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StageEntry" ADD CONSTRAINT "StageEntry_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TuningSession" ADD CONSTRAINT "TuningSession_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TuningSession" ADD CONSTRAINT "TuningSession_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_tuningSessionId_fkey" FOREIGN KEY ("tuningSessionId") REFERENCES "TuningSession"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_presetId_fkey" FOREIGN KEY ("presetId") REFERENCES "Preset"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pull" ADD CONSTRAINT "Pull_logId_fkey" FOREIGN KEY ("logId") REFERENCES "Log"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Log" ADD CONSTRAINT "Log_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Log" ADD CONSTRAINT "Log_tuningSessionId_fkey" FOREIGN KEY ("tuningSessionId") REFERENCES "TuningSession"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignOff" ADD CONSTRAINT "SignOff_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SignOff" ADD CONSTRAINT "SignOff_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReportLink" ADD CONSTRAINT "ReportLink_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReportLink" ADD CONSTRAINT "ReportLink_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEvent" ADD CONSTRAINT "AuditEvent_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "KeptReply" ADD CONSTRAINT "KeptReply_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
