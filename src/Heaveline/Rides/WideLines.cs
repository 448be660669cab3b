using System.Runtime.CompilerServices;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Rides;

/// <summary><see cref="LaneLines"/> with as many frequencies side by side as <typeparamref name="T"/> has places.</summary>
internal sealed unsafe class WideLines<T> : LaneLines
    where T : unmanaged, ILane<T>
{
    private const int Block = RideGrid.Block;

    // Registers begin at multiples of their own size: none straddles two lines of the cache.
    private const int Line = 64;

    /// <inheritdoc/>
    [SkipLocalsInit]
    public override double[] Positions(RideGrid grid, double[] heights, int waves, LinearRide ride)
    {
        var (n, wide, size) = (ride.Count, ride.Count + waves, 2 * waves * ride.Count * Block);
        var positions = new double[grid.Blocks * size];
        var elimination = new RideElimination(ride);
        var room = stackalloc byte[(RideElimination.Scratch(n, waves) * sizeof(T)) + Line];
        var re = Aligned(room);
        fixed (double* omegas = grid.Omegas, road = heights, all = positions)
        {
            for (var block = 0; block < grid.Blocks; block++)
            {
                for (var part = 0; part < Block; part += T.Count)
                {
                    elimination.Solve(omegas + (block * Block) + part, road + (block * 32 * Block) + part, Block, waves, re);
                    var to = all + (block * size) + part;
                    for (var wave = 0; wave < waves; wave++)
                    {
                        for (var i = 0; i < n; i++, to += 2 * Block)
                        {
                            *(T*)to = re[(i * wide) + n + wave];
                            *(T*)(to + Block) = re[(n * wide) + (i * wide) + n + wave];
                        }
                    }
                }
            }
        }

        return positions;
    }

    /// <inheritdoc/>
    [SkipLocalsInit]
    public override void Squares(
        RideGrid grid, double[] heights, int waves, LinearRide ride, ReadOnlySpan<double> rows, Span<double> place, Span<double> speed)
    {
        var (n, wide, count, parts) = (ride.Count, ride.Count + waves, place.Length, Block / T.Count);
        var elimination = new RideElimination(ride);
        var scratch = RideElimination.Scratch(n, waves);
        var room = stackalloc byte[((scratch + (2 * count * parts)) * sizeof(T)) + Line];
        var re = Aligned(room);
        var im = re + (n * wide);
        var sums = re + scratch;
        new Span<T>(sums, 2 * count * parts).Clear();
        fixed (double* omegas = grid.Omegas, weights = grid.Weights, road = heights, row = rows)
        {
            for (var block = 0; block < grid.Blocks; block++)
            {
                for (var part = 0; part < parts; part++)
                {
                    var at = (block * Block) + (part * T.Count);
                    elimination.Solve(omegas + at, road + (block * 32 * Block) + (part * T.Count), Block, waves, re);
                    var weight = *(T*)(weights + at);
                    var square = *(T*)(omegas + at) * *(T*)(omegas + at);
                    for (var r = 0; r < count; r++)
                    {
                        var power = T.Of(0.0);
                        for (var wave = n; wave < wide; wave++)
                        {
                            var (a, b) = (T.Of(0.0), T.Of(0.0));
                            for (var i = 0; i < n; i++)
                            {
                                var share = row[(r * n) + i];
                                if (share != 0.0)
                                {
                                    a = T.Fma(T.Of(share), re[(i * wide) + wave], a);
                                    b = T.Fma(T.Of(share), im[(i * wide) + wave], b);
                                }
                            }

                            power = T.Fma(a, a, T.Fma(b, b, power));
                        }

                        power *= weight;
                        sums[(2 * r * parts) + part] += power;
                        sums[(((2 * r) + 1) * parts) + part] += power * square;
                    }
                }
            }
        }

        for (var r = 0; r < count; r++)
        {
            place[r] = Sum((double*)(sums + (2 * r * parts)));
            speed[r] = Sum((double*)(sums + (((2 * r) + 1) * parts)));
        }
    }

    /// <inheritdoc/>
    public override double[] Signal(RideGrid grid, double[] heights, int waves, double[] positions, int count, RideSignal signal)
    {
        var squares = new double[grid.Omegas.Length];
        var size = 2 * waves * count * Block;
        fixed (double* omegas = grid.Omegas, road = heights, all = positions, to = squares)
        {
            for (var block = 0; block < grid.Blocks; block++)
            {
                for (var part = 0; part < Block; part += T.Count)
                {
                    var omega = *(T*)(omegas + (block * Block) + part);
                    var square = omega * omega;
                    var power = T.Of(0.0);
                    for (var wave = 0; wave < waves; wave++)
                    {
                        var (a, b) = (T.Of(0.0), T.Of(0.0));
                        var from = all + (block * size) + (wave * 2 * count * Block) + part;
                        for (var i = 0; i < count; i++, from += 2 * Block)
                        {
                            if (signal.Place[i] != 0.0 || signal.Acceleration[i] != 0.0)
                            {
                                Add(T.Of(signal.Place[i]) - (square * T.Of(signal.Acceleration[i])), from, ref a, ref b);
                            }

                            if (signal.Speed[i] != 0.0)
                            {
                                Turn(omega * T.Of(signal.Speed[i]), from, ref a, ref b);
                            }
                        }

                        from = road + (((block * 16) + (wave * 4)) * 2 * Block) + part;
                        for (var i = 0; i < 4; i++, from += 2 * Block)
                        {
                            if (signal.RoadPlace[i] != 0.0)
                            {
                                Add(T.Of(signal.RoadPlace[i]), from, ref a, ref b);
                            }

                            if (signal.RoadSpeed[i] != 0.0)
                            {
                                Turn(omega * T.Of(signal.RoadSpeed[i]), from, ref a, ref b);
                            }
                        }

                        power = T.Fma(a, a, T.Fma(b, b, power));
                    }

                    *(T*)(to + (block * Block) + part) = power;
                }
            }
        }

        return squares;
    }

    // A real share of a complex number.
    private static void Add(T share, double* from, ref T a, ref T b)
    {
        a = T.Fma(share, *(T*)from, a);
        b = T.Fma(share, *(T*)(from + Block), b);
    }

    // An imaginary share.
    private static void Turn(T share, double* from, ref T a, ref T b)
    {
        a = T.Fma(-share, *(T*)(from + Block), a);
        b = T.Fma(share, *(T*)from, b);
    }

    private static double Sum(double* parts)
    {
        var sum = 0.0;
        for (var k = 0; k < Block; k++)
        {
            sum += parts[k];
        }

        return sum;
    }

    private static T* Aligned(byte* room) => (T*)(((nint)room + Line - 1) & ~(nint)(Line - 1));
}
