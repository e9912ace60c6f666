#!/bin/sh
# One share of a sweep in each task of a Slurm job array.
# Submit: sbatch --array=1-4 slurm.sh SCENARIO FOLDER; a task that was stopped continues when it is requeued.
# When all tasks have ended: blowcell merge FOLDER/share-* --out FOLDER/whole
#SBATCH --job-name=sweep
#SBATCH --cpus-per-task=1
#SBATCH --requeue
set -eu
scenario=${1:?"usage: sbatch --array=1-4 slurm.sh SCENARIO FOLDER"}
folder=${2:?"usage: sbatch --array=1-4 slurm.sh SCENARIO FOLDER"}
share=$SLURM_ARRAY_TASK_ID

# 2 means that points are refused: the others are made, and merge lists the refused ones.
blowcell sweep "$scenario" --vary "stations.*.steps.cool=-1 s..+1 s by 0.5 s" --vary "valve.shift=0.2 s,0.3 s" \
  --shard "$share/$SLURM_ARRAY_TASK_MAX" --out "$folder/share-$share" --jobs 1 --quiet || [ $? -le 3 ]
