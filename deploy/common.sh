# What the scripts of this folder share; sourced, not run.
# shellcheck shell=bash

repository=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

fail() {
  printf '%s\n' "$*" >&2
  exit 1
}

# install_packages WHAT PACKAGE...: by apt-get where this user may, else says what to run.
install_packages() {
  local what=$1 as_root=()
  shift
  local install=(apt-get install --yes --no-install-recommends "$@")
  command -v apt-get >/dev/null || fail "$what is missing, and there is no apt-get here: install it by hand."
  if [ "$(id -u)" != 0 ]; then
    # Asks for a password only where somebody can type one.
    if command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
      as_root=(sudo)
    else
      fail "$what is missing. As root, run: apt-get update && ${install[*]}"
    fi
  fi
  printf '%s is missing: %s\n' "$what" "${install[*]}" >&2
  if ! "${as_root[@]}" apt-get update -qq >&2 ||
    ! "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive "${install[@]}" -qq >&2; then
    fail "$what could not be installed: see above."
  fi
}

# The places where the service itself looks for PostgreSQL's server programs (Hosting/PostgresBinaries.cs).
has_postgres() {
  local folder
  [ -z "${PG_BIN:-}" ] || return 0
  { command -v initdb && command -v postgres; } >/dev/null && return 0
  for folder in /usr/lib/postgresql/*/bin; do
    [ ! -x "$folder/postgres" ] || return 0
  done
  return 1
}

require_postgres() {
  has_postgres || install_packages PostgreSQL postgresql
}

# The folders where the service looks for the font of its PDFs (Features/Paper/PaperFonts.cs).
require_fonts() {
  local folder
  for folder in /usr/share/fonts/truetype/dejavu /usr/share/fonts/dejavu-sans-fonts /usr/share/fonts/TTF /usr/share/fonts/dejavu; do
    [ ! -r "$folder/DejaVuSans.ttf" ] || return 0
  done
  install_packages "The font DejaVu Sans" fonts-dejavu-core
}

# Reads PDFs back in the tests.
require_poppler() {
  { command -v pdftotext && command -v pdftoppm && command -v pdfinfo; } >/dev/null || install_packages Poppler poppler-utils
}

require_chromium() {
  [ -x /usr/bin/chromium ] || install_packages Chromium chromium fonts-dejavu-core
}

require_dotnet() {
  command -v dotnet >/dev/null ||
    fail "The .NET 10 SDK is missing: install it (https://dotnet.microsoft.com/download), then run this again."
  (cd "$repository" && dotnet --version >/dev/null 2>&1) ||
    fail "The .NET SDK that global.json names is missing, there are: $(dotnet --list-sdks | tr '\n' ' ')"
}

# Where the service keeps what lasts when Workshop:DataFolder is not set (Hosting/DatabaseLocator.cs).
data_folder() {
  if [ "$(id -u)" = 0 ]; then
    echo /var/lib/workshop
  else
    case ${XDG_STATE_HOME:-} in
      /*) echo "${XDG_STATE_HOME%/}/workshop" ;;
      *) echo "$HOME/.local/state/workshop" ;;
    esac
  fi
}

# Makes PostgreSQL's own tools work on the private cluster of a running service, as its superuser.
use_private_cluster() {
  local folder=$1 pid_file=$1/postgres/data/postmaster.pid
  [ -r "$folder/pgpass" ] || fail "There is no data folder of this user at $folder: name it with --data-folder."
  [ -r "$pid_file" ] || fail "No service runs on $folder: start it first."
  PGHOST=$(sed -n 5p "$pid_file")
  PGPORT=$(sed -n 4p "$pid_file")
  PGPASSFILE=$folder/pgpass
  PGUSER=postgres
  PGDATABASE=workshop
  export PGHOST PGPORT PGPASSFILE PGUSER PGDATABASE
}

# tool_arguments NAME ARGUMENT...: sets file, and which database to work on, for backup and restore.
tool_arguments() {
  local usage="Usage: deploy/$1 [--data-folder FOLDER] FILE" folder=
  shift
  if [ "${1:-}" = --data-folder ]; then
    folder=${2:?$usage}
    shift 2
  fi
  if [ $# != 1 ] || [ -z "$1" ]; then
    fail "$usage
The database is that of the service that runs on FOLDER ($(data_folder) by default), or the one that PGHOST,
PGUSER, PGDATABASE and PGPASSFILE name where PGHOST is set."
  fi
  # shellcheck disable=SC2034 # read by the script that sources this
  file=$1
  if [ -n "$folder" ] || [ -z "${PGHOST:-}" ]; then
    use_private_cluster "${folder:-$(data_folder)}"
  fi
  export PGDATABASE=${PGDATABASE:-workshop}
}

# How many tables a backup holds; 1259 is the number of PostgreSQL's catalogue of tables.
tables_in() {
  pg_restore --list "$1" | grep -cE '^[0-9]+; 1259 [0-9]+ TABLE ' || true
}
