using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>A function and its slope at eight places at once.</summary>
internal interface IWidePair
{
    /// <summary>Value and slope.</summary>
    (Vector512<double> Value, Vector512<double> Slope) At(Vector512<double> x);
}
