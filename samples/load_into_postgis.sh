#!/usr/bin/env bash
# 08: loads a delivered GeoPackage into PostGIS and asks it two questions.
#
#     samples/load_into_postgis.sh mottle-demo/mottle.gpkg
#
# Starts a database of its own on the loopback address, in a folder that is thrown away, and stops it
# at the end; nothing else on the machine is touched. Needs PostgreSQL with PostGIS and ogr2ogr
# (Debian: postgresql, postgis, postgresql-15-postgis-3, gdal-bin).
set -euo pipefail
[ $# -eq 1 ] || { echo "usage: load_into_postgis.sh FILE.gpkg" >&2; exit 2; }

bin=$(ls -d /usr/lib/postgresql/*/bin | sort -V | tail -1)
work=$(mktemp -d)
port=${PGPORT:-54329}
# a database server refuses to run as root
as() { if [ "$(id -u)" -eq 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi; }
[ "$(id -u)" -ne 0 ] || chown postgres "$work"
stop() {
  as "$bin/pg_ctl" -D "$work/data" -m fast -w stop >/dev/null 2>&1 || true
  rm -rf "$work"
}
trap stop EXIT

as "$bin/initdb" -D "$work/data" -U mottle -A trust --no-sync >/dev/null
as "$bin/pg_ctl" -D "$work/data" -w -l "$work/log" \
  -o "-p $port -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c fsync=off" start >/dev/null
sql() { psql -h 127.0.0.1 -p "$port" -U mottle -d turf -v ON_ERROR_STOP=1 -q -A -t "$@"; }
psql -h 127.0.0.1 -p "$port" -U mottle -d postgres -q -c 'create database turf'
sql -c 'create extension postgis'

ogr2ogr -q -f PostgreSQL "PG:host=127.0.0.1 port=$port user=mottle dbname=turf" "$1" \
  green zone patch spot reading course

echo "ground of each class, m2, and what the zones leave of each green:"
sql -F '  ' -c "
  select z.green_id, z.surv_id, round(sum(st_area(z.geom)) filter (where z.cls in ('dry', 'probably dry'))::numeric, 1) as dry,
         round((st_area(g.geom) - sum(st_area(z.geom)))::numeric, 2) as left_over
  from zone z join green g using (green_id) group by 1, 2, g.geom order by 1, 2"
echo "readings inside each patch:"
sql -F '  ' -c "
  select p.patch_id, p.kind, count(*) from patch p join reading r
  on r.green_id = p.green_id and r.surv_id = p.surv_id and r.used = 1 and st_covers(p.geom, r.geom)
  group by 1, 2 order by 1"
wrong=$(sql -c "
  select count(*) from (
    select abs(st_area(g.geom) - sum(st_area(z.geom))) as gap
    from zone z join green g using (green_id) group by z.green_id, z.surv_id, g.geom) as t where gap > 0.01")
[ "$wrong" -eq 0 ] || { echo "$wrong greens are not tiled by their zones" >&2; exit 1; }
