-- AlterTable
ALTER TABLE "Member" ADD COLUMN     "tourStep" INTEGER;
