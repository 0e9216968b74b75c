-- AlterTable
ALTER TABLE "Pull" ADD COLUMN "foundSoundAt" DATETIME;
ALTER TABLE "Pull" ADD COLUMN "foundSoundBy" TEXT;
ALTER TABLE "Pull" ADD COLUMN "foundSoundNote" TEXT;
