-- AlterTable
ALTER TABLE "Workshop" ADD COLUMN     "checklistRevision" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "paperHeader" JSONB;

-- CreateTable
CREATE TABLE "ChecklistRevision" (
    "id" TEXT NOT NULL,
    "workshopId" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL,
    "items" JSONB NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "ChecklistRevision_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "ChecklistRevision_workshopId_revision_key" ON "ChecklistRevision"("workshopId", "revision");

-- AddForeignKey
ALTER TABLE "ChecklistRevision" ADD CONSTRAINT "ChecklistRevision_workshopId_fkey" FOREIGN KEY ("workshopId") REFERENCES "Workshop"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
