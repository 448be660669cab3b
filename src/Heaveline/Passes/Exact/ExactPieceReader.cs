using Heaveline.Elements;

namespace Heaveline.Passes.Exact;

/// <summary>What the exact run makes of a law: pieces about its trim. It knows straight pieces alone.</summary>
/// <param name="trim">Travel or velocity of the element at trim.</param>
internal readonly struct ExactPieceReader(double trim) : ILawReader<ExactLaw>
{
    public ExactLaw Read(StraightLaw law) => ExactLaw.From(law, trim);

    public ExactLaw Read(GasLaw law) => throw Refused(law);

    public ExactLaw Read(PowerLaw law) => throw Refused(law);

    private static NotSupportedException Refused(Law law) => new($"An exact run knows no {law.Curved}.");
}
