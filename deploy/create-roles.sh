#!/bin/sh
# Run once by the database's container on an empty volume. The same roles and database as in a private cluster: one role
# that owns the tables and migrates them, one that the service works as with the rights that were granted to it.
set -eu
psql --no-psqlrc --username "$POSTGRES_USER" --dbname postgres \
  -v ON_ERROR_STOP=1 -v password="$POSTGRES_PASSWORD" <<'SQL'
CREATE ROLE workshop_owner LOGIN CREATEDB CREATEROLE PASSWORD :'password';
CREATE ROLE workshop_service LOGIN PASSWORD :'password';
CREATE DATABASE workshop OWNER workshop_owner;
SQL
