#!/bin/sh
# Divides a sweep into shares and makes them with GNU parallel, one worker thread each, then merges them.
# A second call continues where the first was stopped. SHARES and JOBS may be set in the environment.
set -eu
scenario=${1:?"usage: gnu-parallel.sh SCENARIO FOLDER"}
folder=${2:?"usage: gnu-parallel.sh SCENARIO FOLDER"}
shares=${SHARES:-4}

# 2 means that points are refused: the others are made, and merge lists the refused ones.
seq "$shares" | parallel --jobs "${JOBS:-100%}" \
  "blowcell sweep '$scenario' --vary 'stations.*.steps.cool=-1 s..+1 s by 0.5 s' --vary 'valve.shift=0.2 s,0.3 s' \
    --shard {}/$shares --out '$folder/share-{}' --jobs 1 --quiet || [ \$? -le 3 ]"
blowcell merge "$folder"/share-* --out "$folder/whole"
