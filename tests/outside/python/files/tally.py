"""Counts what held and prints what did not."""


class Tally:
    def __init__(self) -> None:
        self.passed: dict[str, int] = {}
        self.failed = 0

    def check(self, what: str, holds: bool, found: object = "") -> bool:
        """Counts one comparison under the heading `what`; prints what was found when it fails."""
        if holds:
            self.passed[what] = self.passed.get(what, 0) + 1
        else:
            self.failed += 1
            if self.failed <= 60:
                print(f"FAILED {what}: {found}")
        return holds

    def near(self, what: str, found: float, expected: float, tolerance: float, where: str = "") -> bool:
        text = f"{where} {found!r} is not {expected!r} within {tolerance}"
        return self.check(what, abs(found - expected) <= tolerance, text)

    def close(self) -> int:
        for what, count in self.passed.items():
            print(f"{count:7}  {what}")
        passed = sum(self.passed.values())
        print(f"{passed} passed, {self.failed} failed")
        return 1 if self.failed or not passed else 0
