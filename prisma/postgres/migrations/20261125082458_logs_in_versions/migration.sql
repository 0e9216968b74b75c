-- DropIndex
DROP INDEX "Pull_logId_logPullIndex_key";

-- AlterTable
ALTER TABLE "Pull" ADD COLUMN     "logVersion" INTEGER;

-- AlterTable
ALTER TABLE "Workshop" ADD COLUMN     "logSettings" JSONB,
ADD COLUMN     "logSettingsRevision" INTEGER NOT NULL DEFAULT 1;

-- CreateTable
CREATE TABLE "LogVersion" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "logId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "codeVersion" TEXT NOT NULL,
    "options" JSONB NOT NULL,
    "recipeId" TEXT,
    "analysis" JSONB NOT NULL,
    "traces" JSONB NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "madeBy" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "LogVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ChannelRecipe" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "name" TEXT NOT NULL,
    "shapeHash" TEXT NOT NULL,
    "shape" JSONB NOT NULL,
    "reading" JSONB NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ChannelRecipe_pkey" PRIMARY KEY ("id")
);

-- What was computed so far becomes the first version of each log, and the one that its pulls were taken from.
INSERT INTO "LogVersion" ("id", "workshopId", "logId", "number", "codeVersion", "options", "analysis", "traces", "madeBy", "madeAt")
SELECT "id", "workshopId", "id", 1, "analysisVersion", '{}', "analysis", "traces", "recordedBy", "recordedAt" FROM "Log";
UPDATE "Pull" SET "logVersion" = 1 WHERE "logId" IS NOT NULL;

-- AlterTable
ALTER TABLE "Log" DROP COLUMN "analysis",
DROP COLUMN "analysisVersion",
DROP COLUMN "traces",
ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1;

-- CreateIndex
CREATE INDEX "LogVersion_workshopId_idx" ON "LogVersion"("workshopId");

-- CreateIndex
CREATE UNIQUE INDEX "LogVersion_logId_number_key" ON "LogVersion"("logId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "ChannelRecipe_workshopId_shapeHash_key" ON "ChannelRecipe"("workshopId", "shapeHash");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_logId_logVersion_logPullIndex_key" ON "Pull"("logId", "logVersion", "logPullIndex");

-- AddForeignKey
ALTER TABLE "LogVersion" ADD CONSTRAINT "LogVersion_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LogVersion" ADD CONSTRAINT "LogVersion_logId_fkey" FOREIGN KEY ("logId") REFERENCES "Log"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ChannelRecipe" ADD CONSTRAINT "ChannelRecipe_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
