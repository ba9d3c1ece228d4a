"""Writes a Network as an ngspice netlist, runs it, and believes nothing but the numbers that were asked for.

ngspice may end with exit code 0 on nonsense (a resistor without a value, a matrix that can't be solved), so
its output is read for warnings and errors, and each number asked for must be there.

Transformers and motors are written by other means than the program's two-by-two matrices: the T circuit with
an ideal transformer of controlled sources, and the two revolving fields as two circuits of their own.
"""

import math
import re
import shutil
import subprocess

NGSPICE = shutil.which("ngspice")
BAD = re.compile(r"warning|error|singular|fatal|can't|cannot|unknown|no such|failed|aborted", re.IGNORECASE)
HARMLESS = re.compile(r"^(Note|Warning: can't find the initialization file)")


class NonsenseFromSpice(AssertionError):
    """ngspice complained, or left out a number."""


def run(netlist, wanted, timeout=60):
    """The wanted numbers (names as ngspice prints them) of a netlist with a .control part; complex for AC."""
    done = subprocess.run(
        [NGSPICE, "-b", "-n", "/dev/stdin"],
        input=netlist,
        capture_output=True,
        text=True,
        timeout=timeout,
        check=False,
    )
    said = done.stdout + done.stderr
    for line in said.splitlines():
        if BAD.search(line) and not HARMLESS.search(line.strip()):
            raise NonsenseFromSpice(line)
    if done.returncode:
        raise NonsenseFromSpice(f"exit code {done.returncode}\n{said}")
    found = {}
    for line in said.splitlines():
        match = re.match(r"\s*(\S+)\s*=\s*(\S+)(\s+from=.*)?$", line.replace(", ", ","))
        if match:
            parts = match.group(2).split(",")
            try:
                numbers = [float(part) for part in parts]
            except ValueError:
                continue
            found[match.group(1).lower()] = complex(*numbers) if len(numbers) == 2 else numbers[0]
    missing = [name for name in wanted if name.lower() not in found]
    if missing:
        raise NonsenseFromSpice(f"no number for {', '.join(missing)}\n{said}")
    return {name: found[name.lower()] for name in wanted}


class Netlist:
    """A netlist that grows; nodes have numbers, the reference is 0."""

    def __init__(self, network, frequency, leak):
        self.network = network
        self.frequency = frequency
        self.lines = []
        self.count = 0
        for name, number in network.nodes.items():
            if number:
                self.lines.append(f"Rleak{number} {number} 0 {1 / leak:.12g}")
            assert name is not None

    def inner(self):
        self.count += 1
        return f"x{self.count}"

    def series(self, tag, a, b, ohm, henry=0.0, farad=math.inf, volt=0j):
        """One branch as a chain; a 0 V source named after it tells its current."""
        at = self.inner()
        self.lines.append(f"Vs{tag} {a} {at} DC 0 AC 0")
        steps = [("R", f"{ohm:.12g}")]
        if henry:
            steps.append(("L", f"{henry:.12g}"))
        if math.isfinite(farad):
            steps.append(("C", f"{farad:.12g}"))
        if volt:
            steps.append(
                ("V", f"DC 0 AC {abs(volt):.12g} {math.degrees(math.atan2(volt.imag, volt.real)):.12g}")
            )
        for i, (letter, value) in enumerate(steps):
            nxt = b if i == len(steps) - 1 else self.inner()
            ends = f"{nxt} {at}" if letter == "V" else f"{at} {nxt}"  # volt drives current out at b
            self.lines.append(f"{letter}{tag} {ends} {value}")
            at = nxt

    def transformer(self, tag, four, t):
        p, q, r, s = four
        a, b, c, d, e = (self.inner() for _ in range(5))
        self.lines += [
            f"R1{tag} {p} {a} {t.primary_ohm:.12g}",
            f"L1{tag} {a} {b} {t.primary_leakage:.12g}",
            f"Lm{tag} {b} {q} {t.magnetizing:.12g}",
            f"Rc{tag} {b} {q} {t.core_ohm:.12g}",
            f"E{tag} {c} {s} {b} {q} {t.ratio:.12g}",
            f"Vt{tag} {c} {d} DC 0 AC 0",
            f"F{tag} {b} {q} Vt{tag} {t.ratio:.12g}",
            f"R2{tag} {d} {e} {t.secondary_ohm:.12g}",
            f"L2{tag} {e} {r} {t.secondary_leakage:.12g}",
        ]

    def motor(self, tag, four, m, slip):
        """Main and auxiliary winding; forward field driven by Im - j a Ia, backward by Im + j a Ia."""
        omega = 2 * math.pi * self.frequency
        p, q, r, s = four
        turn = 1 / omega  # one ampere through this inductance is j volts
        names = {
            k: self.inner() for k in ("m1", "m2", "m3", "a1", "a2", "a3", "ja", "f", "b", "f2", "b2", "jd")
        }
        n = names
        self.lines += [
            f"Vm{tag} {p} {n['m1']} DC 0 AC 0",
            f"Rm{tag} {n['m1']} {n['m2']} {m.main_ohm:.12g}",
            f"Lm{tag} {n['m2']} {n['m3']} {m.main_reactance / omega:.12g}",
            f"Em{tag} {n['m3']} {q} POLY(2) {n['f']} 0 {n['b']} 0 0 1 1",
            f"Va{tag} {r} {n['a1']} DC 0 AC 0",
            f"Ra{tag} {n['a1']} {n['a2']} {m.aux_ohm:.12g}",
            f"La{tag} {n['a2']} {n['a3']} {m.aux_reactance / omega:.12g}",
            f"Ea{tag} {n['a3']} {s} {n['jd']} 0 {m.turns:.12g}",
            # ninety degrees ahead of the auxiliary current
            f"Fj{tag} 0 {n['ja']} Va{tag} 1",
            f"Lj{tag} {n['ja']} 0 {turn:.12g}",
            # ninety degrees ahead of the difference of the two fields
            f"Gd{tag} 0 {n['jd']} {n['f']} {n['b']} 1",
            f"Ld{tag} {n['jd']} 0 {turn:.12g}",
        ]
        for field, sign, share in (("f", -1, max(slip, 1e-6)), ("b", 1, 2 - max(slip, 1e-6))):
            node, inside = n[field], n[field + "2"]
            self.lines += [
                f"F{field}{tag} 0 {node} Vm{tag} 1",
                f"G{field}{tag} 0 {node} {n['ja']} 0 {sign * m.turns:.12g}",
                f"Lg{field}{tag} {node} 0 {m.magnetizing / 2 / omega:.12g}",
                f"Rr{field}{tag} {node} {inside} {m.rotor_ohm / 2 / share:.12g}",
                f"Lr{field}{tag} {inside} 0 {m.rotor_reactance / 2 / omega:.12g}",
            ]

    def branches(self):
        net = self.network
        for name, i in net.index.items():
            a, b = net.ends[i]
            farad = 1 / net.elastance[i] if net.elastance[i] else math.inf
            self.series(f"b{i}", a, b, net.ohm[i], net.henry[i], farad, net.volt[i])
            assert name is not None
        return self

    def extra(self, number, a, b, admittance):
        """A meter: conductance and capacitance beside each other."""
        nodes = self.network.nodes
        self.lines.append(f"Rx{number} {nodes[a]} {nodes[b]} {1 / admittance.real:.12g}")
        if admittance.imag:
            farad = admittance.imag / (2 * math.pi * self.frequency)
            self.lines.append(f"Cx{number} {nodes[a]} {nodes[b]} {farad:.12g}")

    def push(self, a, b, current):
        """Current driven from a through the outside into b."""
        self.lines.append(f"Ipush {self.network.nodes[a]} {self.network.nodes[b]} DC {current} AC {current}")

    def text(self, analysis, prints):
        body = "\n".join(self.lines)
        asked = "\n".join(f"print {p}" for p in prints)
        return f"* network\n{body}\n.control\nset numdgt=12\n{analysis}\n{asked}\nquit\n.endc\n.end\n"
