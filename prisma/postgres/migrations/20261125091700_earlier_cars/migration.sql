-- AlterTable
ALTER TABLE "Workshop" ADD COLUMN     "leansOnEarlierCars" BOOLEAN NOT NULL DEFAULT true;
