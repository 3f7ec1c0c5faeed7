using CsCheck;
using Plenum.Core.Foundation;

namespace Plenum.Core.Tests.Foundation;

public class NaturalOrderTests
{
    [Fact]
    public void Numbers_inside_codes_sort_as_numbers()
    {
        string[] codes = ["1.10", "1.2", "1.9", "A-2", "A-10", "1", "02.1", "2.1"];
        Array.Sort(codes, NaturalOrder.Codes);
        Assert.Equal(["1", "1.2", "1.9", "1.10", "02.1", "2.1", "A-2", "A-10"], codes);
    }

    [Fact]
    public void The_order_is_total_and_does_not_depend_on_where_codes_begin() =>
        Gen.Char["0129.A-"]
            .Array[0, 8]
            .Select(marks => new string(marks))
            .Array[3]
            .Sample(codes =>
            {
                var order = NaturalOrder.Codes;
                var (a, b, c) = (codes[0], codes[1], codes[2]);
                return Math.Sign(order.Compare(a, b)) == -Math.Sign(order.Compare(b, a))
                    && (order.Compare(a, b) == 0) == (a == b)
                    && (
                        order.Compare(a, b) > 0
                        || order.Compare(b, c) > 0
                        || order.Compare(a, c) <= 0
                    );
            });
}
