"""Diffusers from number theory: sequences, well depths and the range of frequency. Lengths in m, frequencies in Hz."""

from planlang.syntax.record import record

LEAST_WELL = 0.025  # m: narrower wells absorb; common practice, no source


@record
class DiffuserRange:
    """From the design frequency to where wells are half a wavelength wide; `flat` is the first frequency at which all
    wells reflect alike, `lobes` the one from which a repeated array sends sound to the sides.
    """

    lowest: float
    highest: float
    flat: float
    lobes: float


def quadratic_residues(prime: int) -> tuple[int, ...]:
    """The sequence n^2 mod N. Source: Schroeder, JASA 65 (1979) 958.

    Raises:
        ValueError: N is no odd prime.
    """
    _check_prime(prime)
    return tuple(n * n % prime for n in range(prime))


def primitive_roots(prime: int) -> tuple[int, ...]:
    """The numbers whose powers give every remainder from 1 to N - 1."""
    _check_prime(prime)
    return tuple(root for root in range(2, prime) if len(set(_powers(root, prime))) == prime - 1)


def primitive_root_sequence(prime: int, root: int) -> tuple[int, ...]:
    """The sequence g^n mod N, n from 1 to N - 1. Source: Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 10.

    Raises:
        ValueError: N is no odd prime, or g no primitive root of it.
    """
    if root not in primitive_roots(prime):
        raise ValueError(f"{root} is no primitive root of {prime}")
    return _powers(root, prime)


def well_depths(sequence: tuple[int, ...], prime: int, design: float, speed: float) -> tuple[float, ...]:
    """Depths s c / (2 N f0), m. Others divide by N - 1 for primitive roots (from memory): say which was used."""
    return tuple(step * speed / (2 * prime * design) for step in sequence)


def diffuser_range(prime: int, design: float, well: float, speed: float) -> DiffuserRange:
    """The range of a quadratic-residue diffuser with wells so wide."""
    return DiffuserRange(design, speed / (2 * well), prime * design, speed / (prime * well))


def _powers(root: int, prime: int) -> tuple[int, ...]:
    return tuple(pow(root, n, prime) for n in range(1, prime))


def _check_prime(number: int) -> None:
    if number < 3 or any(number % divisor == 0 for divisor in range(2, int(number**0.5) + 1)):
        raise ValueError(f"{number} is no odd prime")
