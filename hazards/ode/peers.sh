#!/bin/sh
# Runs the reference cases with two independent solvers, where they are
# installed, and with this package, on this machine, one after the other.
# Columns: problem, method, rtol, ms, right-hand sides, greatest error in K and
# in conversion (this package: as its benchmarks print them, for four
# tolerances). Usage: hazards/ode/peers.sh [rtol of the others]
set -eu
cd "$(dirname "$0")"
tables=../../testdata/published/ode
rtol=${1:-1e-6}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

libraries="-lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lm"
# shellcheck disable=SC2086
if cc -O2 -o "$work/cvode" peers/cvode.c $libraries 2>/dev/null; then
	"$work/cvode" "$tables" "$rtol" 201
else
	echo "cvode: not installed (a C compiler and the development files of SUNDIALS 6 are needed), left out" >&2
fi

python=
for candidate in /usr/bin/python3 python3; do
	if "$candidate" -c 'import scipy.integrate' 2>/dev/null; then
		python=$candidate
		break
	fi
done
if [ -n "$python" ]; then
	PYTHONDONTWRITEBYTECODE=1 "$python" peers/scipy_peer.py "$tables" "$rtol" 15
else
	echo "scipy: not installed, left out" >&2
fi

# Seven runs of each, of which the median.
go test -run '^$' -bench 'Reference|Robertson|Exotherm' -benchtime 100x -count 7 . >"$work/ours"
grep '^Benchmark' "$work/ours" | sort -k1,1 -k3,3n | awk '{ if (++seen[$1] == 4) print }'
