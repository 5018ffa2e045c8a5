"""The front door: `python3 plugin build | serve | test`, on a machine with only Python, git and a package index.

It uses the standard library alone, and only such Python as older versions can read too, so that even they get a clear
answer. It makes `.venv` beside the project, installs what the lock names, and hands over.
"""

import hashlib
import os
import subprocess
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
PROJECT = os.path.dirname(HERE)
ENVIRONMENT = os.path.join(PROJECT, ".venv")
STAMP = os.path.join(ENVIRONMENT, "evenseam-installed")
OLDEST = (3, 11)
USAGE = """usage: python3 plugin build    the site and its handouts, into site/
       python3 plugin serve    the site on this machine, rebuilt at every save
       python3 plugin test     all tests (more words go to pytest)"""
CAIRO_MISSING = (
    "evenseam: the cairo library is not here, so PNG pictures and templates-only PDFs are left out "
    "(the site and every handout are still built). To have them: "
    "Debian or Ubuntu: apt install libcairo2; macOS: brew install cairo; Windows: winget install gtk3-runtime"
)


def main(words):
    """Run one command; return the exit status."""
    if sys.version_info < OLDEST:
        return complain("needs Python %d.%d or newer; this is %s" % (OLDEST + (sys.version.split()[0],)))
    if not words or words[0] not in ("build", "serve", "test"):
        print(USAGE)
        return 0 if words and words[0] in ("-h", "--help", "help") else 2
    command, rest = words[0], words[1:]
    problem = prepare(with_tests=command == "test")
    if problem:
        return complain(problem)
    return {"build": build, "serve": serve, "test": run_tests}[command](rest)


def build(rest):
    """Build the site and the handouts, strictly: any problem of a pattern ends with exit status 1."""
    tell_if_cairo_is_missing()
    return run([python(), "-m", "mkdocs", "build", "--strict", *rest])


def serve(rest):
    """Serve the site and rebuild it when something is saved."""
    tell_if_cairo_is_missing()
    return run([python(), "-m", "mkdocs", "serve", "--livereload", *rest])


def run_tests(rest):
    """Run every test, on all processors unless told otherwise."""
    return run([python(), "-m", "pytest", *(rest or ["-n", "auto", "--dist", "worksteal"])])


def prepare(with_tests):
    """Make sure the environment holds what the lock names; return a sentence if it cannot be had."""
    locks = [os.path.join(HERE, "lock", name) for name in (("run.txt", "test.txt") if with_tests else ("run.txt",))]
    wanted = fingerprint([*locks, os.path.join(PROJECT, "pyproject.toml")])
    if is_installed(wanted, with_tests):
        return None
    problem = make_environment()
    if problem:
        return problem
    for lock in locks:
        print("evenseam: installing what %s names (once)" % os.path.relpath(lock, PROJECT), flush=True)
        problem = pip("install", "--require-hashes", "-r", lock)
        if problem:
            return problem
    # The project itself, so that MkDocs finds the plugin by its entry point; its parts all come from the lock.
    problem = pip("install", "--no-deps", "--no-build-isolation", "--editable", PROJECT)
    if problem:
        return problem
    with open(STAMP, "w", encoding="utf-8") as file:
        file.write("%s %s\n" % (wanted, "test" if with_tests else "run"))
    return None


def is_installed(wanted, with_tests):
    """Tell whether the environment was made from these very locks; one made for the tests serves all."""
    try:
        with open(STAMP, encoding="utf-8") as file:
            found, _, kind = file.read().strip().partition(" ")
    except OSError:
        return False
    if not os.path.exists(python()):
        return False
    run_only = fingerprint([os.path.join(HERE, "lock", "run.txt"), os.path.join(PROJECT, "pyproject.toml")])
    everything = fingerprint(
        [
            os.path.join(HERE, "lock", "run.txt"),
            os.path.join(HERE, "lock", "test.txt"),
            os.path.join(PROJECT, "pyproject.toml"),
        ]
    )
    return found == everything and kind == "test" if with_tests else found in (run_only, everything)


def fingerprint(paths):
    """Return a short text that changes when one of the files, or the Python in use, does."""
    digest = hashlib.sha256(("%d.%d" % sys.version_info[:2]).encode())
    for path in paths:
        with open(path, "rb") as file:
            digest.update(file.read())
    return digest.hexdigest()[:24]


def make_environment():
    """Make `.venv`; return a sentence if this Python cannot."""
    try:
        import venv
    except ImportError:
        return no_venv()
    try:
        import ensurepip  # noqa: F401  Debian ships Python without it
    except ImportError:
        return no_venv()
    print("evenseam: making .venv (once)", flush=True)
    try:
        # Cleared, so that a half-made or older environment leaves nothing behind.
        venv.EnvBuilder(with_pip=True, clear=True).create(ENVIRONMENT)
    except (OSError, subprocess.CalledProcessError) as error:
        return "could not make .venv: %s" % error
    return None


def no_venv():
    """Return what to do when the venv module is missing."""
    return "this Python has no venv module; on Debian or Ubuntu: apt install python3-venv (elsewhere: install Python from python.org)"


def pip(*words):
    """Run pip quietly; return a sentence that says what failed, or None."""
    command = [python(), "-m", "pip", "--disable-pip-version-check", "--quiet", *words]
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
    if done.returncode == 0:
        return None
    lines = [line.strip() for line in done.stdout.splitlines() if line.strip()]
    # "from versions: none": every name in the lock exists, so an index that knows no version was not reached.
    signs = (
        "NewConnectionError",
        "name resolution",
        "ConnectTimeout",
        "unreachable",
        "getaddrinfo",
        "from versions: none",
    )
    if any(sign in line for line in lines for sign in signs):
        return "no package index could be reached; connect to a network once and run the command again"
    errors = [line for line in lines if line.startswith("ERROR")]
    return "pip could not install what is needed: %s" % (errors or lines or ["no reason given"])[0]


def python():
    """Return the environment's Python."""
    return os.path.join(ENVIRONMENT, *(("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")))


def tell_if_cairo_is_missing():
    """Say in one line what is left out when the cairo library cannot be loaded."""
    found = subprocess.run(
        [python(), "-c", "import cairocffi"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False
    )
    if found.returncode != 0:
        print(CAIRO_MISSING, file=sys.stderr, flush=True)


def run(command):
    """Run a command in the project folder and return its exit status."""
    settings = dict(os.environ, NO_MKDOCS_2_WARNING="1", DISABLE_MKDOCS_2_WARNING="true", PYTHONDONTWRITEBYTECODE="1")
    try:
        return subprocess.run(command, cwd=PROJECT, env=settings, check=False).returncode
    except KeyboardInterrupt:
        return 130


def complain(sentence):
    """Print one line on standard error and return exit status 2."""
    print("evenseam: %s" % sentence, file=sys.stderr)
    return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
