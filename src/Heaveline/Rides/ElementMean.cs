namespace Heaveline.Rides;

/// <summary>Mean force of an element and its equivalent rate E[∂F/∂s] and damping E[∂F/∂ṡ] under a Gaussian motion.</summary>
internal readonly record struct ElementMean(double Force, double Rate, double Damping);
