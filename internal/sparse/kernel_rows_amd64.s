#include "textflag.h"

// func residual2FMA(from, end int, start, node *int32, value, x, r, q *float32)
//
// q = r − x − V·x. A block is two rows of two numbers; both products of both rows
// are taken at once and added up in pairs at the end of the row.
TEXT ·residual2FMA(SB), NOSPLIT, $0-64
	MOVQ end+8(FP), BX
	MOVQ start+16(FP), SI
	MOVQ node+24(FP), DI
	MOVQ value+32(FP), DX
	MOVQ x+40(FP), R8
	MOVQ r+48(FP), R9
	MOVQ q+56(FP), R10
	MOVQ from+0(FP), R11 // row
	MOVLQSX (SI)(R11*4), R12 // place of the block
rows2:
	CMPQ R11, BX
	JGE  done2
	MOVLQSX 4(SI)(R11*4), R13
	VXORPS X0, X0, X0
	MOVQ R12, R14
	SHLQ $4, R14
	ADDQ DX, R14
blocks2:
	CMPQ R12, R13
	JGE  sum2
	MOVLQSX (DI)(R12*4), AX
	VMOVDDUP (R8)(AX*8), X1
	VFMADD231PS (R14), X1, X0
	INCQ R12
	ADDQ $16, R14
	JMP  blocks2
sum2:
	VHADDPS X0, X0, X0
	VMOVSD (R8)(R11*8), X2
	VMOVSD (R9)(R11*8), X3
	VADDPS X2, X0, X0
	VSUBPS X0, X3, X0
	VMOVSD X0, (R10)(R11*8)
	INCQ R11
	JMP  rows2
done2:
	RET

// func residual3FMA(from, end int, start, node *int32, value, x, r, q *float32)
//
// The same for blocks of three columns of four numbers, the last of them nothing.
TEXT ·residual3FMA(SB), NOSPLIT, $0-64
	MOVQ end+8(FP), BX
	MOVQ start+16(FP), SI
	MOVQ node+24(FP), DI
	MOVQ value+32(FP), DX
	MOVQ x+40(FP), R8
	MOVQ r+48(FP), R9
	MOVQ q+56(FP), R10
	MOVQ from+0(FP), R11
	MOVLQSX (SI)(R11*4), R12
	LEAQ (R11)(R11*2), CX
	SHLQ $2, CX
	ADDQ CX, R9
	ADDQ CX, R10
	ADDQ R8, CX          // own part of x
rows3:
	CMPQ R11, BX
	JGE  done3
	MOVLQSX 4(SI)(R11*4), R13
	VMOVSD (CX), X0
	VINSERTPS $0x20, 8(CX), X0, X0
	VXORPS X4, X4, X4
	LEAQ (R12)(R12*2), R14
	SHLQ $4, R14
	ADDQ DX, R14
blocks3:
	CMPQ R12, R13
	JGE  sum3
	MOVLQSX (DI)(R12*4), AX
	LEAQ (AX)(AX*2), AX
	VBROADCASTSS (R8)(AX*4), X1
	VBROADCASTSS 4(R8)(AX*4), X2
	VBROADCASTSS 8(R8)(AX*4), X3
	VFMADD231PS (R14), X1, X0
	VFMADD231PS 16(R14), X2, X4
	VFMADD231PS 32(R14), X3, X0
	INCQ R12
	ADDQ $48, R14
	JMP  blocks3
sum3:
	VADDPS X4, X0, X0
	VMOVSD (R9), X2
	VINSERTPS $0x20, 8(R9), X2, X2
	VSUBPS X0, X2, X0
	VMOVSD X0, (R10)
	VEXTRACTPS $2, X0, 8(R10)
	ADDQ $12, CX
	ADDQ $12, R9
	ADDQ $12, R10
	INCQ R11
	JMP  rows3
done3:
	RET
