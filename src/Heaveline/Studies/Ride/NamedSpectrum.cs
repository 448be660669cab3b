using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>A random road in the long run, with its name.</summary>
/// <param name="Name">What it is, so that "a random road of" may stand before it ("class C").</param>
/// <param name="Spectrum">Its spectrum.</param>
public sealed record NamedSpectrum(string Name, RoadSpectrum Spectrum)
{
    /// <summary>The geometric mean of a class [ISO 8608:2016].</summary>
    public static NamedSpectrum Of(RoadClass roadClass)
    {
        ArgumentNullException.ThrowIfNull(roadClass);
        return new NamedSpectrum(roadClass.ToString(), RoadSpectrum.Of(roadClass));
    }
}
