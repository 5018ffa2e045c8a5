"""The workflows cannot be made to do a stranger's bidding: few rights, no secrets, data only as data."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from evenseam.cli.main import _parser

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / ".github" / "workflows"
NAMES = ("check", "publish", "review", "comment")
READ_ONLY = {"contents": "read"}


def workflow(name: str) -> dict[str, Any]:
    found = yaml.safe_load((FOLDER / f"{name}.yml").read_text("utf-8"))
    # YAML 1.1 reads the key `on` as a truth.
    found["on"] = found.pop(True)
    return found


def steps(name: str) -> list[dict[str, Any]]:
    return [step for job in workflow(name)["jobs"].values() for step in job["steps"]]


def permissions(name: str) -> Iterator[dict[str, str]]:
    found = workflow(name)
    yield found["permissions"]
    yield from (job["permissions"] for job in found["jobs"].values() if "permissions" in job)


def test_these_are_all_the_workflows() -> None:
    assert {path.name for path in FOLDER.iterdir()} == {f"{name}.yml" for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
class TestEveryWorkflow:
    """What must hold of each of them."""

    def test_no_right_is_given_by_default(self, name: str) -> None:
        assert workflow(name)["permissions"] in (READ_ONLY, {})

    def test_a_stranger_never_starts_it_with_rights(self, name: str) -> None:
        assert "pull_request_target" not in (FOLDER / f"{name}.yml").read_text("utf-8")
        triggers = workflow(name)["on"]
        if "pull_request" in triggers:
            assert all(given == READ_ONLY for given in permissions(name))
            assert "secrets" not in (FOLDER / f"{name}.yml").read_text("utf-8").replace("no secrets", "")

    def test_nothing_of_the_event_is_written_into_a_program(self, name: str) -> None:
        for step in steps(name):
            for program in (step.get("run", ""), step.get("with", {}).get("script", "")):
                assert "${{" not in program

    def test_every_action_is_of_one_whole_version_and_of_the_platform_itself(self, name: str) -> None:
        used = [step["uses"] for step in steps(name) if "uses" in step]
        assert used and all(re.fullmatch(r"actions/[a-z-]+@(v\d+\.\d+\.\d+|[0-9a-f]{40})", action) for action in used)

    def test_a_checkout_leaves_no_key_behind(self, name: str) -> None:
        for step in steps(name):
            if step.get("uses", "").startswith("actions/checkout@"):
                assert step["with"]["persist-credentials"] is False

    def test_it_ends_by_itself(self, name: str) -> None:
        assert all(job["timeout-minutes"] <= 60 for job in workflow(name)["jobs"].values())


def test_sites_are_built_with_the_whole_history() -> None:
    """A clone cut short has no older versions, and no figures in its lists of corrections."""
    for name in ("check", "publish"):
        (checkout,) = (step for step in steps(name) if step.get("uses", "").startswith("actions/checkout@"))
        assert checkout["with"]["fetch-depth"] == 0


def test_only_publishing_and_commenting_can_write() -> None:
    def writes(name: str) -> set[str]:
        return {right for given in permissions(name) for right, level in given.items() if level == "write"}

    assert {name: writes(name) for name in NAMES} == {
        "check": set(), "review": set(), "comment": {"pull-requests"}, "publish": {"pages", "id-token"},
    }  # fmt: skip


def test_only_the_main_branch_is_published() -> None:
    triggers = workflow("publish")["on"]
    assert triggers["push"] == {"branches": ["main"]} and set(triggers) == {"push", "workflow_dispatch"}
    # The job that may publish runs nothing but the platform's own step.
    assert all("run" not in step for step in workflow("publish")["jobs"]["publish"]["steps"])


class TestReview:
    """The base's code reads the stranger's texts out of git's store."""

    def test_the_base_is_checked_out_and_nothing_else(self) -> None:
        (checkout,) = [step for step in steps("review") if step.get("uses", "").startswith("actions/checkout@")]
        assert checkout["with"]["ref"] == "${{ github.event.pull_request.base.sha }}"
        programs = "\n".join(step.get("run", "") for step in steps("review"))
        assert not re.search(r"git (checkout|switch|merge(?!-base)|pull|restore|worktree|reset|read-tree)", programs)

    def test_what_the_event_says_goes_into_the_environment_only_as_numbers_and_hashes(self) -> None:
        given = workflow("review")["jobs"]["review"]["env"]
        assert set(re.findall(r"github\.event\.[\w.]+", json.dumps(given))) == {
            "github.event.pull_request.base.sha", "github.event.pull_request.head.sha", "github.event.pull_request.number",
        }  # fmt: skip

    def test_the_command_is_one_that_there_is(self) -> None:
        (program,) = [step["run"] for step in steps("review") if step.get("name") == "Compare"]
        commands = re.findall(r"evenseam (compare [^>\n|]*)", program)
        assert len(commands) == 3
        for command in commands:
            options = _parser().parse_args(command.replace('"$fork"', "a").replace('"$HEAD"', "b").split())
            assert (options.base, options.head) == ("a", "b")

    def test_a_comparison_that_could_not_run_is_no_review(self, tmp_path: Path) -> None:
        """Exit status 1 says that something changed; 2 must end the step."""
        (program,) = [step["run"] for step in steps("review") if step.get("name") == "Compare"]
        (line,) = [line for line in program.splitlines() if line.startswith("allow()")]
        for status, expected in ((0, "on"), (1, "on"), (2, ""), (137, "")):
            script = f"set -e\n{line}\nallow sh -c 'exit {status}'\necho on\n"
            done = subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=False)
            assert done.stdout.strip() == expected


NODE = shutil.which("node") or next(
    iter(Path(sys.prefix).glob("lib/python*/site-packages/playwright/driver/node")), None
)
HARNESS = """
const calls = [];
const given = JSON.parse(process.argv[2]);
const core = { setFailed: words => calls.push(['failed', words]), info: words => calls.push(['info', words]) };
const context = { repo: { owner: 'us', repo: 'quilts' }, payload: given.payload };
const github = {
  rest: {
    pulls: { list: async words => { calls.push(['list', words]); return { data: given.pulls }; } },
    issues: {
      listComments: 'listComments',
      updateComment: async words => calls.push(['update', words]),
      createComment: async words => calls.push(['create', words]),
    },
  },
  paginate: async (what, words) => { calls.push(['comments', words]); return given.comments; },
};
const program = require('fs').readFileSync(process.argv[3], 'utf8');
const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor;
new AsyncFunction('github', 'context', 'core', 'require', program)(github, context, core, require)
  .then(() => console.log(JSON.stringify(calls)), error => { console.log(JSON.stringify([...calls, ['thrown', String(error)]])); });
"""
MARK = "<!-- evenseam review -->"
EVENT = {
    "repository": {"id": 7},
    "workflow_run": {"head_sha": "abc", "head_branch": "lanterns; rm -rf", "head_repository": {"owner": {"login": "stranger"}}},
}  # fmt: skip
PULL = {"number": 12, "head": {"sha": "abc"}, "base": {"repo": {"id": 7}}}
OTHER = {"number": 13, "head": {"sha": "older"}, "base": {"repo": {"id": 7}}}
ELSEWHERE = {"number": 14, "head": {"sha": "abc"}, "base": {"repo": {"id": 8}}}


@pytest.mark.skipif(NODE is None, reason="this test runs the comment's program; it wants node")
class TestComment:
    """The artifact is a text; the pull request is the event's."""

    @pytest.fixture
    def run(self, tmp_path: Path):
        def run(
            content: bytes, pulls: list[Any] | None = None, comments: list[Any] | None = None, *, link: str = ""
        ) -> list[list[Any]]:
            (program,) = [step["with"]["script"] for step in steps("comment") if "github-script" in step["uses"]]
            (tmp_path / "program.js").write_text(program, "utf-8")
            (tmp_path / "harness.js").write_text(HARNESS, "utf-8")
            review = tmp_path / "comment.md"
            review.unlink(missing_ok=True)
            if link:
                review.symlink_to(link)
            else:
                review.write_bytes(content)
            given = {
                "payload": EVENT,
                "pulls": [OTHER, ELSEWHERE, PULL] if pulls is None else pulls,
                "comments": comments or [],
            }
            done = subprocess.run(
                [str(NODE), str(tmp_path / "harness.js"), json.dumps(given), str(tmp_path / "program.js")],
                env={**os.environ, "REVIEW": str(review)}, capture_output=True, text=True, check=True, timeout=60,
            )  # fmt: skip
            found: list[list[Any]] = json.loads(done.stdout)
            return found

        return run

    def test_nothing_is_checked_out_or_run(self) -> None:
        assert all("run" not in step for step in steps("comment"))
        assert [step["uses"].partition("@")[0] for step in steps("comment")] == [
            "actions/download-artifact",
            "actions/github-script",
        ]

    def test_it_waits_for_the_review(self) -> None:
        assert workflow("comment")["on"] == {
            "workflow_run": {"workflows": [workflow("review")["name"]], "types": ["completed"]}
        }
        assert "workflow_run.event == 'pull_request'" in workflow("comment")["jobs"]["comment"]["if"]

    def test_the_comment_goes_to_the_pull_request_of_the_event(self, run) -> None:
        calls = run(f"{MARK}\n### 3 cuts changed\n".encode())
        assert calls[0] == [
            "list",
            {"owner": "us", "repo": "quilts", "state": "open", "head": "stranger:lanterns; rm -rf", "per_page": 100},
        ]
        assert calls[-1] == [
            "create",
            {"owner": "us", "repo": "quilts", "issue_number": 12, "body": f"{MARK}\n\n### 3 cuts changed\n"},
        ]

    def test_a_second_review_takes_the_place_of_the_first(self, run) -> None:
        bot = {"type": "Bot", "login": "github-actions[bot]"}
        comments = [
            {"id": 1, "user": {"type": "User", "login": "stranger"}, "body": MARK + " mine"},
            {"id": 2, "user": bot, "body": "something else"},
            {"id": 3, "user": bot, "body": MARK + "\nold"},
        ]  # fmt: skip
        kind, words = run(b"new", comments=comments)[-1]
        assert (kind, words["comment_id"], words["body"]) == ("update", 3, f"{MARK}\nnew")

    @pytest.mark.parametrize("pulls", [[], [OTHER], [ELSEWHERE]])
    def test_without_such_a_pull_request_nothing_is_posted(self, run, pulls: list[Any]) -> None:
        assert [call[0] for call in run(b"x", pulls)] == ["list", "info"]

    @pytest.mark.parametrize("content", [b"x" * 65_001, b"x" * 300_000, "\u00e9".encode() * 65_001, b"@" * 40_000])
    def test_a_text_too_long_is_refused(self, run, content: bytes) -> None:
        assert [call[0] for call in run(content)] == ["failed"]

    def test_no_text_is_refused(self, run) -> None:
        assert run(b"\xff\xfe")[-1][0] == "thrown"

    def test_a_link_is_refused(self, run) -> None:
        assert [call[0] for call in run(b"", link="/etc/passwd")] == ["failed"]

    @pytest.mark.parametrize(("given", "shown"), [
        ("@everyone", "@\u200beveryone"), ("<img src=x onerror=y>", "<\u200bimg src=x onerror=y>"), ("<details>", "<details>"), ("<details open onclick=x>", "<\u200bdetails open onclick=x>"),
        ("![x](https://e.example/x)", "!\u200b[x]\u200b(https:\u200b//e.example/x)"), ("[x](/y)", "[x]\u200b(/y)"), ("[x][y]", "[x]\u200b[y]"), ("[y]: /z", "[y]\u200b: /z"),
        ("<https://e.example>", "<\u200bhttps:\u200b//e.example>"), ("www.e.example", "www\u200b.e.example"), ("fixes #12", "fixes #\u200b12"), ("colour #23465f", "colour #23465f"),
        ("GH-12", "GH-\u200b12"), ("a\u202eb\u0000c\u200bd", "abcd"), (MARK, ""), ("<!-- hidden -->", "<\u200b!-- hidden -->"), ("</summary><script>", "</summary><\u200bscript>"),
        ("| a | b |\n| - | - |\n| 1/4 \u2192 3/8 | **x** |", "| a | b |\n| - | - |\n| 1/4 \u2192 3/8 | **x** |"),
    ])  # fmt: skip
    def test_marks_do_nothing(self, run, given: str, shown: str) -> None:
        kind, words = run(given.encode())[-1]
        assert kind == "create" and words["body"] == f"{MARK}\n{shown}"


def test_the_hook_runs_a_command_that_there_is() -> None:
    (hook,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))
    assert hook["id"] == "evenseam-check" and hook["language"] == "python" and hook["pass_filenames"] is False
    program, *words = hook["entry"].split()
    assert program == "evenseam" and _parser().parse_args(words).run.__module__ == "evenseam.cli.check"
    assert re.match(hook["files"], "patterns/low-tide/pattern.yaml")
