"""Sequences from number theory that diffusers are built by, and the exact depths of their wells."""

from fractions import Fraction

SPEED = Fraction(343_200)
"""Speed of sound in air near 20 C, mm/s: depths are cut once, whatever the room's air does. Source: ISO 9613-1."""


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


def exact_depths(sequence: tuple[int, ...], prime: int, design: Fraction) -> tuple[Fraction, ...]:
    """Depths s c / (2 N f0) in mm, for a design frequency in Hz; N is the prime for both sequences.

    Source: Schroeder, JASA 65 (1979) 958. For primitive roots others divide by N - 1 (from memory).
    """
    return tuple(step * SPEED / (2 * prime * design) for step in sequence)


def is_odd_prime(number: int) -> bool:
    """Whether a number is a prime other than 2."""
    return number > 2 and all(number % divisor for divisor in range(2, int(number**0.5) + 1))


def _powers(root: int, prime: int) -> tuple[int, ...]:
    return tuple(pow(root, n, prime) for n in range(1, prime))


def _check_prime(number: int) -> None:
    if not is_odd_prime(number):
        raise ValueError(f"{number} is no odd prime")
