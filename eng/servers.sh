# Sourced by ./test: the tests of several machines start a Redis and a PostgreSQL of their own, from the system's packages.
first_server() { local name; for name in "$@"; do [ -x "$name" ] && { echo "$name"; return; }; done; true; }
has_redis() { command -v redis-server >/dev/null 2>&1; }
has_postgres() { command -v initdb >/dev/null 2>&1 || [ -n "$(first_server /usr/lib/postgresql/*/bin/initdb)" ]; }
if ! has_redis || ! has_postgres; then
    install_servers() {
        echo "test: installing the servers of the tests of several machines (apt-get install redis-server postgresql) …" >&2
        { "$@" apt-get update -q && DEBIAN_FRONTEND=noninteractive "$@" apt-get install -y -q --no-install-recommends redis-server postgresql; } >&2
    }
    if command -v apt-get >/dev/null 2>&1; then
        if [ "$(id -u)" = 0 ]; then install_servers env; else install_servers sudo -n; fi
    fi
    if ! has_redis || ! has_postgres; then
        echo "test: redis-server and PostgreSQL were not found and could not be installed. Install them; the tests of several machines will fail without." >&2
    fi
fi
