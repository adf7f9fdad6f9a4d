"""The rods in one state, what acts on them, and the memory that Newton steps reuse.

Everything that depends only on the state is here: energy, forces and stiffness from `elastic`, `contact`,
`friction` and `loads`, the factorisation, and how far a step may go. `newton` decides what to do.
"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

import numpy as np

from pegwright.shape.contact import add_contact_derivatives, contact_energy
from pegwright.shape.elastic import add_elastic_derivatives, elastic_energy
from pegwright.shape.elements import empty_elements
from pegwright.shape.friction import (
    StickingContacts,
    add_friction_derivatives,
    friction_energy,
    no_sticking_contacts,
)
from pegwright.shape.loads import LoadArrays, add_load_derivatives, load_energy
from pegwright.shape.multifrontal import DONE, UNFIT, CholeskyFactor, factorise, solve_factored
from pegwright.shape.near_pairs import find_near_pairs, pairs_within, touchable_pairs
from pegwright.shape.nested_dissection import (
    build_elimination_tree,
    mend_elimination_tree,
    vertex_adjacency,
)
from pegwright.shape.rods import Floats, Ints, Rods, rest_at_current_lengths
from pegwright.shape.step_bound import bound_listed_pairs, bound_unlisted_pairs

__all__ = ["RodSystem"]

_MARGIN_MM = 0.03  # pairs this near to contact have a place in the tree, so that it rarely needs mending
_LEAF = 8  # vertices of a front that is not cut further
_OVERGROWN = 1.2  # a mended tree is rebuilt once its work has grown by this factor
_FARTHEST_MM = 6.0  # the widest look-ahead beyond contact
_HALVINGS = 30


class RodSystem:
    """Positions `x` (n, 3) in mm with everything that follows from them.

    After `assemble`: `energy_n_mm`, `gradient` (n, 3) in N, and the number of `touching` pairs and other
    elements. `grown` is the share of the true thickness that the rods have. No pair that may touch comes
    nearer than `least_mm`.
    """

    def __init__(
        self,
        x: Floats,
        rods: Rods,
        load: LoadArrays,
        least_mm: float,
        grown: float = 1.0,
        sticking: StickingContacts | None = None,
        workers: ThreadPoolExecutor | None = None,
    ) -> None:
        n = len(x)
        self.x, self.rods, self.load, self.least_mm, self.grown = x, rods, load, least_mm, grown
        self.sticking = sticking or no_sticking_contacts()
        self.workers = workers
        self.energy_n_mm, self.touching = np.inf, 0
        # Kept from step to step, so that nothing large is allocated twice.
        self.gradient = np.zeros((n, 3))
        self.blocks = np.zeros((3, n, 3, 3))  # stiffness along the bands, see `elastic`
        self.radius = np.zeros(n)
        self.elements = empty_elements(0)
        self.factor: CholeskyFactor | None = None
        self.work_when_cut = 0.0  # multiplications with the last tree that was cut, not mended
        self.pairs = self._pairs_in_place()

    def stiffness_scale(self) -> float:
        """Return the mean stretching stiffness of an edge in N/mm, which damping is measured by."""
        edge = self.rods.rest_mm > 0
        return float(np.mean(self.rods.area_mm2[edge] * 0.4 / self.rods.rest_mm[edge]))

    def assemble(self, true: float) -> None:
        """Assemble energy, forces and stiffness, with the share `true` of the Hessian's negative part."""
        count = len(self.pairs) + len(self.load.ties) + len(self.sticking.pairs)
        if count > len(self.elements.corners):
            self.elements = empty_elements(2 * count)
        x, rods, load, elements = self.x, self.rods, self.load, self.elements
        self.gradient[:] = 0.0
        self.blocks[:] = 0.0
        energy = add_elastic_derivatives(x, rods, true, self.gradient, self.blocks) + load_energy(
            x, rods, load
        )
        ties = add_load_derivatives(x, rods, load, self.gradient, self.blocks[0], elements)
        if len(self.sticking.pairs):  # otherwise its kernels need not be compiled
            energy += add_friction_derivatives(x, rods.next, self.sticking, self.gradient, elements, ties)
        first = ties + len(self.sticking.pairs)
        pressed, touching = add_contact_derivatives(
            x, rods, self.pairs, self.grown, self.least_mm, true, self.radius, self.gradient, elements, first
        )
        self.gradient[rods.fixed] = 0.0
        self.energy_n_mm, self.touching = energy + pressed, first + touching

    def residual_n(self) -> float:
        """Return the norm of the gradient in N."""
        return float(np.sqrt((self.gradient**2).sum()))

    def factorise(self, damping: float) -> bool:
        """Factor the stiffness with `damping` (N/mm) on its diagonal; False if it is not positive definite.

        The tree is kept while it covers every contact, else mended or rebuilt.
        """
        blocks = self.blocks.copy()
        blocks[0][:, range(3), range(3)] += damping
        blocks[0][self.rods.fixed] = np.eye(3)
        if self.factor is not None:
            code = factorise(self.factor, self.rods, blocks, self.elements, self.touching, self.workers)
            if code != UNFIT:
                return code == DONE
        joined = pairs_within(self.x, self.rods, self.pairs, self.radius, _MARGIN_MM)
        links = vertex_adjacency(self.rods, np.concatenate([joined, self.load.ties, self.sticking.pairs]))
        tree = None if self.factor is None else mend_elimination_tree(self.factor.tree, *links)
        if tree is None or tree.work > _OVERGROWN * self.work_when_cut:
            tree = build_elimination_tree(self.x, *links, _LEAF)
            self.work_when_cut = tree.work
        self.factor = CholeskyFactor(tree, self.factor)
        return factorise(self.factor, self.rods, blocks, self.elements, self.touching, self.workers) == DONE

    def newton_step(self) -> Floats:
        """Return the Newton step (n, 3) in mm from the factored stiffness; held vertices stay.

        Raises:
            ValueError: nothing has been factored.
        """
        if self.factor is None:
            raise ValueError("factorise the stiffness first")
        step = solve_factored(self.factor, -self.gradient)
        step[self.rods.fixed] = 0.0
        return step

    def look_ahead(self, step: Floats) -> tuple[float, Ints]:
        """Return the largest safe α ≤ 1 along `step`, and the pairs (m, 2) that may touch on the way."""
        touch = self._touch_mm()
        reach, alpha = bound_unlisted_pairs(self.x, step, self.rods, touch, touch + _FARTHEST_MM)
        near = find_near_pairs(self.x, step, self.rods, reach, touch, self.workers)
        alpha = min(alpha, bound_listed_pairs(self.x, step, self.rods, near, self.least_mm))
        return alpha, touchable_pairs(near, alpha, touch)

    def descend(self, step: Floats, alpha: float, pairs: Ints) -> float:
        """Halve α until the energy along `step` has fallen enough (Armijo); return 0 if it never does."""
        rods = self.rods
        slope = float(np.sum(self.gradient * step))
        # W(λ) is a difference of numbers near 3C, so a fall below their rounding cannot be seen.
        noise = 4e-16 * float(np.sum(rods.area_mm2 * rods.rest_mm * rods.plane_mpa))
        for _ in range(_HALVINGS):
            y = self.x + alpha * step
            reached = elastic_energy(y, rods) + load_energy(y, rods, self.load)
            if len(self.sticking.pairs):
                reached += friction_energy(y, rods.next, self.sticking)
            if np.isfinite(reached):
                reached += contact_energy(y, rods, pairs, self.grown, self.least_mm, self.radius)
            if reached <= self.energy_n_mm + 1e-4 * alpha * slope + noise:
                return alpha
            alpha *= 0.5
        return 0.0

    def move(self, to: Floats, pairs: Ints) -> None:
        """Move the rods to `to` (n, 3), where `pairs` may touch."""
        self.x, self.pairs = to, pairs

    def rest_here(self) -> None:
        """Make every band's current length its rest length."""
        self.rods = rest_at_current_lengths(self.x, self.rods)

    def thicken(self, share: float) -> None:
        """Grow the rods to a share of their true thickness."""
        self.grown = share
        self.pairs = self._pairs_in_place()

    def _pairs_in_place(self) -> Ints:
        touch = self._touch_mm()
        near = find_near_pairs(self.x, np.zeros_like(self.x), self.rods, touch, touch)
        return touchable_pairs(near, 0.0, touch)

    def _touch_mm(self) -> float:
        """Return a distance beyond which no strands touch, with room for one step's thickening."""
        x, rods = self.x, self.rods
        edge = rods.rest_mm > 0
        length = np.linalg.norm(x[rods.next[edge]] - x[edge], axis=1)
        return 2.2 * self.grown * float(np.max(rods.radius_mm[edge] * np.sqrt(rods.rest_mm[edge] / length)))
