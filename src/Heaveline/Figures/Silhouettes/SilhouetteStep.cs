namespace Heaveline.Figures.Silhouettes;

/// <summary>One stroke of a path: to a place straight, round a corner, or over a wheel arch.</summary>
/// <param name="To">Where it ends.</param>
/// <param name="Round">The corner that a curve of the second degree rounds; null for any other stroke.</param>
/// <param name="ArchRadius">Radius of the arch, m; 0 for any other stroke.</param>
internal readonly record struct SilhouetteStep(ScenePoint To, ScenePoint? Round = null, double ArchRadius = 0.0);
