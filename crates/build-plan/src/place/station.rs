//! Where along a part a reading is taken.

use crate::named::named;

named! {
    /// Where along a journal, a bore or a face. On a journal the oil hole itself
    /// and the fillets are kept clear of.
    Station {
        /// In front of the oil hole, or at the front end.
        Front = "front", "front of the oil hole";
        /// Behind the oil hole, or at the rear end.
        Rear = "rear", "rear of the oil hole";
        /// A bore near its top, where the top ring turns round.
        Top = "top", "top of ring travel";
        /// Half way down a bore or guide.
        Middle = "middle", "middle";
        /// A bore near its bottom.
        Bottom = "bottom", "bottom";
        /// The front side of a round part, such as a liner's flange.
        FrontSide = "front-side", "front side";
        /// The rear side of a round part.
        RearSide = "rear-side", "rear side";
        /// The left side of a round part, seen from the front.
        LeftSide = "left-side", "left side";
        /// The right side of a round part, seen from the front.
        RightSide = "right-side", "right side";
        /// Along a face, down its left edge.
        AlongLeft = "along-left", "along the left edge";
        /// Along a face, down its middle.
        AlongMiddle = "along-middle", "along the middle";
        /// Along a face, down its right edge.
        AlongRight = "along-right", "along the right edge";
        /// Across a face at its front.
        AcrossFront = "across-front", "across the front";
        /// Across a face at its rear.
        AcrossRear = "across-rear", "across the rear";
        /// Corner to corner over a face.
        DiagonalOne = "diagonal-one", "corner to corner";
        /// The other two corners.
        DiagonalTwo = "diagonal-two", "the other corners";
        /// At idle.
        Idle = "idle", "at idle";
        /// At 2,000 turns a minute.
        TwoThousand = "two-thousand", "at 2,000 rpm";
        /// At 3,000 turns a minute.
        ThreeThousand = "three-thousand", "at 3,000 rpm";
    }
}
