"""The front door: `python3 plugin build | serve | test`, on a machine with only Python, git and a package index.

It uses the standard library alone, and only such Python as older versions can read too, so that even they get a clear
answer. It makes `.venv` beside the project, installs what the lock names, and hands over.
"""

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
import time

HERE = os.path.dirname(os.path.abspath(__file__))
PROJECT = os.path.dirname(HERE)
ENVIRONMENT = os.path.join(PROJECT, ".venv")
STAMP = os.path.join(ENVIRONMENT, "evenseam-installed")
OLDEST = (3, 11)
SITE = os.path.join(PROJECT, "site")
NEW = "-new-"
OLD = "-old-"
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
    """Build the site and the handouts, strictly: any problem of a pattern ends with exit status 1.

    The site is made in a folder of its own and takes its name only when it is whole, so that whoever looks sees the
    old site or the new one: also while a build runs, when it fails, and when it is killed.
    """
    tell_if_cairo_is_missing()
    site, rest = site_and_rest(rest)
    os.makedirs(os.path.dirname(site), exist_ok=True)
    with Lock(beside(site, "-lock")):
        clear_away(site)
        new = tempfile.mkdtemp(prefix=os.path.basename(beside(site, NEW)), dir=os.path.dirname(site))
        try:
            # The site is exchanged here, and not once more by the plugin.
            status = run(
                [python(), "-m", "mkdocs", "build", "--strict", "--site-dir", new, *rest], EVENSEAM_EXCHANGES="1"
            )
            if status == 0:
                os.chmod(new, 0o755)  # mkdtemp makes folders that only their owner can enter
                put_in_place(new, site)
            elif os.path.isdir(site):
                print("evenseam: %s stays as it was" % os.path.relpath(site), file=sys.stderr)
        except OSError as error:
            return complain(
                "%s could not be put in its place: %s; it stays as it was" % (site, error.strerror or error)
            )
        finally:
            shutil.rmtree(new, ignore_errors=True)
    return status


def site_and_rest(rest):
    """Return the folder to publish into, and the words that are not about it."""
    words, site = list(rest), SITE
    for place, word in enumerate(words):
        if word in ("-d", "--site-dir") and place + 1 < len(words):
            site = words[place + 1]
            del words[place : place + 2]
            break
        if word.startswith("--site-dir="):
            site = word.partition("=")[2]
            del words[place]
            break
    # A link in its place is followed, so that the folder behind it is exchanged and the link stays.
    return os.path.realpath(os.path.join(PROJECT, site)), words


def beside(site, ending):
    """Return a hidden name beside the site, on the same disk, so that renaming is enough."""
    return os.path.join(os.path.dirname(site), "." + os.path.basename(site) + ending)


def clear_away(site):
    """Put right what a killed build left: give the old site its name back if it has none, remove half-made ones.

    Only for the holder of the lock: nobody else is building then.
    """
    folder, name = os.path.split(site)
    left = [entry for entry in os.listdir(folder) if entry.startswith(("." + name + NEW, "." + name + OLD))]
    old = [entry for entry in left if entry.startswith("." + name + OLD)]
    if old and not os.path.exists(site):
        os.rename(os.path.join(folder, old[0]), site)
        left.remove(old[0])
    for entry in left:
        shutil.rmtree(os.path.join(folder, entry), ignore_errors=True)


def put_in_place(new, site):
    """Let a whole new folder take the site's name, in one step where the system has such a step."""
    if not os.path.isdir(site):
        os.rename(new, site)
    elif not exchange(new, site):
        # Two steps; killed between them, the next build finds the old folder and gives it its name back.
        old = tempfile.mkdtemp(prefix=os.path.basename(beside(site, OLD)), dir=os.path.dirname(site))
        os.rmdir(old)
        os.rename(site, old)
        try:
            os.rename(new, site)
        except OSError:
            os.rename(old, site)
            raise
        shutil.rmtree(old, ignore_errors=True)


def exchange(one, other):
    """Let two folders exchange their names at once; tell whether this system can."""
    try:
        import ctypes

        system = ctypes.CDLL(None)
        if sys.platform == "darwin":
            return system.renamex_np(os.fsencode(one), os.fsencode(other), 2) == 0  # RENAME_SWAP
        here = -100  # AT_FDCWD
        return system.renameat2(here, os.fsencode(one), here, os.fsencode(other), 2) == 0  # RENAME_EXCHANGE
    except (ImportError, OSError, AttributeError, TypeError):
        return False


class Lock:
    """Held while a site is built; the system lets go of it when its holder ends, however it ends."""

    def __init__(self, path):
        self.file = open(path, "a")  # noqa: SIM115  closed when the lock is let go

    def __enter__(self):
        if not self.is_taken():
            print("evenseam: another build is at work; this one begins when it is done", file=sys.stderr, flush=True)
            while not self.is_taken():
                time.sleep(0.2)
        return self

    def __exit__(self, *failure):
        self.file.close()

    def is_taken(self):
        """Try to take the lock; tell whether it is ours now."""
        try:
            if os.name == "nt":
                import msvcrt

                msvcrt.locking(self.file.fileno(), msvcrt.LK_NBLCK, 1)
            else:
                import fcntl

                fcntl.flock(self.file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            return False
        return True


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


def run(command, **told):
    """Run a command in the project folder, with more settings in its environment; return its exit status."""
    settings = dict(os.environ, NO_MKDOCS_2_WARNING="1", DISABLE_MKDOCS_2_WARNING="true", PYTHONDONTWRITEBYTECODE="1")
    settings.update(told)
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
