-- AlterTable
ALTER TABLE "Pull" ADD COLUMN     "foundSoundAt" TIMESTAMP(3),
ADD COLUMN     "foundSoundBy" TEXT,
ADD COLUMN     "foundSoundNote" TEXT;
