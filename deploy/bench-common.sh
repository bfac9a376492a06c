# What the benchmarks that ask a running service share; sourced, not run. They print rows of a table, as a client on the same machine sees it.
# shellcheck shell=bash
# shellcheck source=deploy/common.sh
. "$(dirname "${BASH_SOURCE[0]}")/common.sh"

# start_demo [OPTION...]: the demo in a folder of its own, until the script ends. Sets site, api, work, service, token (the manager's) and
# run_sql; options are the service's.
start_demo() {
  require_dotnet
  require_postgres
  command -v psql >/dev/null || fail "psql is missing: install postgresql-client."
  command -v python3 >/dev/null || fail "python3 is missing: it signs in and reads the answers."
  local project=$repository/src/Workshop.Web port
  [ -n "${BENCH_BUILT:-}" ] || dotnet build "$project" -c Release -v quiet --nologo -nodeReuse:false >/dev/null
  work=$(mktemp -d "/tmp/workshop-$(basename "$0").XXXXXX")
  # The server's own user has to get through to its folder.
  chmod 711 "$work"
  service=
  trap end_demo EXIT
  port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
  site=http://127.0.0.1:$port
  api=$site/api/v1
  "$project/bin/Release/net10.0/Workshop.Web" --contentRoot "$project" --urls "$site" --Workshop:RequestsPerSecond=100000 \
    --Workshop:Demo=true --Workshop:DataFolder="$work/data" "$@" >"$work/log" 2>&1 &
  service=$!
  until curl -fs -o /dev/null "$site/health/ready"; do
    kill -0 "$service" 2>/dev/null || fail "The service has ended: $(tail -n 5 "$work/log")"
    sleep 1
  done

  # shellcheck disable=SC2034 # the scripts use it
  run_sql=(env "PGPASSWORD=$(cut -d: -f5 "$work/data/pgpass")" psql -h "$work/data/postgres" -U postgres -d workshop -q -v ON_ERROR_STOP=1)
  token=$(curl -fsS "$api/session" -H 'content-type: application/json' \
    -d "{\"userName\":\"otto\",\"password\":\"$(password_of otto)\"}" | answer token)
}

# shellcheck disable=SC2317 # called by the trap
end_demo() {
  [ -z "$service" ] || kill "$service" 2>/dev/null || true
  [ -z "$service" ] || wait "$service" 2>/dev/null || true
  rm -rf "$work"
}

password_of() { awk -v name="$1" '$1 == name { print $2 }' "$work/data/demo-passwords.txt"; }

# answer FIELD: of the JSON on standard input, by a path such as rows.0.id.
answer() {
  python3 -c 'import functools, json, sys
print(functools.reduce(lambda a, k: a[int(k)] if k.isdigit() else a[k], sys.argv[1].split("."), json.load(sys.stdin)))' "$1"
}

# ask CURL-ARGUMENT...: as the manager, over the API or a page.
ask() { curl -fsS -H "authorization: Bearer $token" "$@"; }

# sign_in NAME: into the pages; the cookies are in $work/cookies.
sign_in() {
  local form
  form=$(curl -fsS -c "$work/cookies" "$site/sign-in" | grep -o 'name="__RequestVerificationToken"[^>]*value="[^"]*"' | head -1 | sed 's/.*value="//; s/"$//')
  curl -fsS -o /dev/null -b "$work/cookies" -c "$work/cookies" "$site/sign-in" \
    --data-urlencode "__RequestVerificationToken=$form" --data-urlencode "Input.UserName=$1" --data-urlencode "Input.Password=$(password_of "$1")"
}

begin_table() { printf '| what | result |\n| --- | --- |\n'; }

# timed NAME CURL-ARGUMENT...: three times to warm up, then 21 times; the median and the slowest. @N@ is another number each time, of two digits.
timed() {
  local name=$1 n
  shift
  for n in $(seq 10 12); do ask -o /dev/null "${@//@N@/$n}"; done
  for n in $(seq 13 33); do
    ask -o /dev/null -w '%{time_total}\n' "${@//@N@/$n}"
  done | sort -n | awk -v name="$name" '{ t[NR] = $1 } END {
    printf "| %s, median and slowest of 21 | %.1f ms, %.1f ms |\n", name, 1000 * t[11], 1000 * t[21] }'
}

# timed_get ADDRESS...: each 41 times, the API with a token, a page with the cookies of sign_in.
timed_get() {
  local address who bytes
  for address; do
    case $address in
      /api/*) who=(-H "authorization: Bearer $token") ;;
      *) who=(-b "$work/cookies") ;;
    esac
    bytes=$(curl -fsS "${who[@]}" "$site$address" | wc -c)
    for _ in $(seq 41); do
      curl -fsS "${who[@]}" -o /dev/null -w '%{time_total}\n' "$site$address"
    done | sort -n | awk -v address="$address" -v bytes="$bytes" '{ t[NR] = $1 } END {
      printf "| GET %s, median, 38th and slowest of 41 (%d kB) | %.0f ms, %.0f ms, %.0f ms |\n", address, bytes / 1000, 1000 * t[21], 1000 * t[38], 1000 * t[41] }'
  done
}

memory_row() { printf '| memory of the service at most | %s MB |\n' "$(awk '/VmHWM/ { print int($2 / 1024) }' "/proc/$service/status")"; }

load_row() { printf '| load of the machine over the last minute, cores | %s, %s |\n' "$(cut -d' ' -f1 /proc/loadavg)" "$(nproc)"; }
