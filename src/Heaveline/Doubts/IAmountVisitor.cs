using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>Is shown every amount of a car in a fixed order and hands back what shall stand in its place.</summary>
internal interface IAmountVisitor
{
    /// <summary>One amount.</summary>
    /// <param name="path">What it is, in words ("front spring rate").</param>
    /// <param name="amount">As the car has it.</param>
    Amount<TDimension> Visit<TDimension>(string path, Amount<TDimension> amount)
        where TDimension : struct, IDimension;

    /// <summary>One table of forces, whose amount is its factor.</summary>
    ForceTable Visit(string path, ForceTable table) => table.Under(Visit(path, table.Factor));

    /// <summary>One damper by tables: both sides have one factor.</summary>
    TableDamper Visit(string path, TableDamper damper) => damper.Under(Visit(path, damper.Factor));
}
