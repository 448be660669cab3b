namespace Heaveline.Gpu.Kernels;

/// <summary>A whole number, not below zero, that a type says: a device's compiler knows it when it compiles.</summary>
internal interface IFixed
{
    static abstract int Value { get; }
}
