using Heaveline.Numerics;
using Heaveline.Search;

namespace Heaveline.Tests.Search;

/// <summary>A study whose setups are driven by a formula: what a search must find is known by driving them all.</summary>
internal sealed class MadeUpStudy : IPassDoer
{
    private readonly SetupSpace space;
    private readonly double[] knobs;
    private long done;

    /// <param name="seed">Which formula.</param>
    /// <param name="options">How many options each place has.</param>
    public MadeUpStudy(ulong seed, params int[] options)
    {
        Seed = seed;
        knobs = [.. Enumerable.Range(0, 64).Select(k => SplitMix.Uniform(seed, (ulong)k))];
        space = new SetupSpace([.. options.Select((n, place) => new OpenPlace($"place {place}", [.. Enumerable.Range(0, n).Select(option =>
            new SetupOption($"part {option}", option == 0 ? 0.0 : 40.0 + (10.0 * option))
            {
                // The car as it is stands in the middle of its list.
                Numbers = [Along(option, n)],
            })]))]);
    }

    public ulong Seed { get; }

    public SetupSpace Space => space;

    /// <summary>How many setups were driven, each time counted.</summary>
    public long Done => Interlocked.Read(ref done);

    /// <summary>A setup that does far better than its parts' numbers say; null for none.</summary>
    public Func<long, bool>? Hidden { get; init; }

    /// <summary>Whom nothing may be chosen of.</summary>
    public Func<long, bool>? Refused { get; init; }

    /// <summary>Which setup does not get across in which draw; null: all do in all.</summary>
    public Func<long, int, bool>? Uncrossed { get; init; }

    /// <summary>How far a draw moves a number, in the logarithm.</summary>
    public double Doubt { get; init; }

    public SearchTask Task => new()
    {
        Space = space,
        Wishes = [WishKind.Settling, WishKind.Hit, WishKind.Money],
        Columns =
        [
            new UseColumn(WishKind.Settling, 0, 1.0, 0.0, "slow"), new UseColumn(WishKind.Hit, 1, 1.0, 0.0, "slow"),
            new UseColumn(WishKind.Settling, 2, 2.0, 0.0, "fast"), new UseColumn(WishKind.Hit, 3, 2.0, 0.0, "fast"),
        ],
        Limits = [],
        Doer = this,
        Standing = _ => SetupRow.None,
        Seed = 3,
    };

    public IReadOnlyList<SetupRow> Do(Piece piece, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        Interlocked.Add(ref done, piece.Setups.Length);
        return [.. piece.Setups.Select(setup => piece.Stage == PieceStage.Look ? new SetupRow(SetupRow.None, []) : Row(setup, piece.Draw))];
    }

    private SetupRow Row(long setup, int draw)
    {
        if (Uncrossed?.Invoke(setup, draw) == true)
        {
            return new SetupRow(9, []);
        }

        var numbers = new double[4];
        for (var k = 0; k < 4; k++)
        {
            var sum = 0.0;
            for (var place = 0; place < space.Places.Length; place++)
            {
                var x = space.Places[place].Options[space.OptionAt(setup, place)].Numbers[0];
                var best = (2.0 * knobs[(8 * k) + place]) - 1.0;
                sum += (0.2 + knobs[32 + place]) * (x - best) * (x - best);
                var next = space.Places[(place + 1) % space.Places.Length].Options[space.OptionAt(setup, (place + 1) % space.Places.Length)];
                sum += 0.1 * x * next.Numbers[0];
            }

            var drawn = draw < 0 ? 0.0 : Doubt * SplitMix.Normals(SplitMix.At(Seed, (ulong)(100 + draw)), (ulong)((setup * 8) + (2 * k))).First;
            numbers[k] = Math.Exp((0.4 * sum) + drawn) * (Hidden?.Invoke(setup) == true && k % 2 == 0 ? 0.5 : 1.0);
        }

        var isRefused = setup != 0L && Refused?.Invoke(setup) == true;
        return new SetupRow(isRefused ? 7 : SetupRow.None, numbers) { Excesses = [isRefused ? 0.01 : -0.01] };
    }

    private static double Along(int option, int count) => count == 1 ? 0.0
        : (2.0 * (option == 0 ? count / 2 : option <= count / 2 ? option - 1 : option) / (count - 1.0)) - 1.0;

    /// <summary>Volume that a front covers of the box up to twice the present car, by even points: a front's worth.</summary>
    public static double Volume(IEnumerable<DrivenSetup> front, double mostMoney)
    {
        var set = front.Select(one => one.Wishes).ToArray();
        var (inside, n) = (0, 24);
        for (var a = 0; a < n; a++)
        {
            for (var b = 0; b < n; b++)
            {
                for (var c = 0; c < n; c++)
                {
                    double[] at = [1.5 * (a + 0.5) / n, 1.5 * (b + 0.5) / n, mostMoney * (c + 0.5) / n];
                    inside += set.Any(w => w[0] <= at[0] && w[1] <= at[1] && w[2] <= at[2]) ? 1 : 0;
                }
            }
        }

        return inside / (double)(n * n * n);
    }
}
